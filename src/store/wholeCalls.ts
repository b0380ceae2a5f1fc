import { ENGINE_TABLES, type Engine, type EngineTransaction } from "./engine.js";
import { checkJarRow, draftRow, mealRow, photoRows, snifferRow } from "./rows.js";
import { listenersTable, listSetAside } from "./setAside.js";
import { addSniffs, relabel } from "./sniffCalls.js";
import type { Changes, WholeStore } from "./store.js";
import { STORE_TABLES, type StoreTable } from "./storeTypes.js";

/** The calls on the data as a whole, but for backups. */
export function wholeCalls(
  engine: Engine,
): Omit<WholeStore, "wasLost" | "exportContents" | "existingRecords" | "applyImport"> {
  return {
    save: (changes) => engine.write([...ENGINE_TABLES], changedTables(changes), (tx) => save(tx, changes)),
    hasDemo: () =>
      engine.read([...ENGINE_TABLES], async (tx) => {
        for (const table of ENGINE_TABLES) if ((await tx.demoIds(table)).length > 0) return true;
        return false;
      }),
    removeDemo: () => engine.write([...ENGINE_TABLES], STORE_TABLES, removeDemo),
    listSetAside: () => listSetAside(engine),
    deleteEverything: () =>
      engine.write([...ENGINE_TABLES], STORE_TABLES, async (tx) => {
        for (const table of ENGINE_TABLES) await tx.clear(table);
      }),
    subscribe: (tables, listener) =>
      engine.subscribe((changed) => {
        const concerned = changed.filter((table) => tables.includes(table));
        if (concerned.length > 0) listener(concerned);
      }),
    onClosed: (listener) => engine.onClosed(listener),
    close: () => engine.close(),
  };
}

async function save(tx: EngineTransaction, changes: Changes): Promise<void> {
  const mark = { demo: changes.demo === true ? 1 : 0 } as const;
  await addSniffs(tx, changes.sniffs ?? [], mark.demo);
  for (const [id, label] of Object.entries(changes.labels ?? {})) await relabel(tx, id, label, label.keptAt);
  for (const photo of changes.photos ?? []) {
    const { note, bytes } = photoRows(photo, mark);
    await tx.put("photos", [note]);
    await tx.put("photoBytes", [bytes]);
  }
  for (const meal of changes.meals ?? []) {
    // A demo meal stays one when it is edited, and so does the user's own.
    const demo = (await tx.get("meals", meal.id))?.demo ?? mark.demo;
    await tx.put("meals", [mealRow(meal, { demo })]);
  }
  await tx.put(
    "sniffers",
    (changes.sniffers ?? []).map((sniffer) => snifferRow(sniffer, mark)),
  );
  await tx.put(
    "checkJar",
    (changes.checkJar ?? []).map((reading) => checkJarRow(reading, mark)),
  );
  await tx.put(
    "drafts",
    (changes.drafts ?? []).map((draft) => draftRow(draft, mark)),
  );
  await tx.remove("drafts", changes.doneDrafts ?? []);
}

function changedTables(changes: Changes): StoreTable[] {
  const { labels, doneDrafts } = changes;
  const named = (["meals", "photos", "sniffs", "sniffers", "checkJar", "drafts"] as const).filter(
    (table) => (changes[table]?.length ?? 0) > 0,
  );
  const more = new Set<StoreTable>(named);
  if (labels !== undefined) more.add("sniffs");
  if ((doneDrafts?.length ?? 0) > 0) more.add("drafts");
  return [...more];
}

async function removeDemo(tx: EngineTransaction): Promise<number> {
  let removed = 0;
  for (const table of ENGINE_TABLES) {
    const ids = await tx.demoIds(table);
    await tx.remove(table, ids);
    // A photo's bytes and a sniff's note are no records of their own to the user.
    if (table === listenersTable(table)) removed += ids.length;
  }
  return removed;
}
