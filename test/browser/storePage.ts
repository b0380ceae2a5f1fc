/** A page with nothing but the store in it; the test calls it through `storePage`. */
import type { BackupRecord } from "../../src/meals/backupContents.js";
import { readBackup, writeBackup } from "../../src/meals/backup.js";
import { indexMeal, searchMeals } from "../../src/meals/mealSearch.js";
import { planImport } from "../../src/meals/importPlan.js";
import { openDexieStore } from "../../src/store/dexieStore.js";
import { sha256 } from "../../src/store/sha256.js";
import type { Store } from "../../src/store/store.js";
import { mealAt, photoOf } from "../store/records.js";
import { manyMeals } from "../meals/manyMeals.js";
import { got } from "../store/outcomes.js";
import { STORE_CONTRACT } from "../store/storeContract.js";

export interface StorePage {
  readonly facts: readonly string[];
  /** Nothing if the fact holds, else what was wrong. */
  check(name: string): Promise<string | null>;
  open(name: string): Promise<string>;
  isClosed(name: string): Promise<boolean>;
  /** Saves meals one after the other and tells of each that was acknowledged; never ends. */
  writeForEver(name: string): void;
  mealIds(name: string): Promise<{ ids: string[]; setAside: number }>;
  /** Saves photos of a mebibyte until one is refused: how many fitted, and why no more. */
  fillUp(name: string): Promise<{ photos: number; kind: string }>;
  deletePhotos(name: string): Promise<void>;
  saveMeal(name: string, id: string): Promise<string>;
  heard(name: string): readonly string[];
  /** Fills a store with so many meals; the best of several times for the first page and for a key press. */
  measure(name: string, meals: number): Promise<{ firstPageMs: number; keyPressMs: number }>;
  /** Brings in so many meals as from a backup; tells when the import begins and when it is acknowledged. */
  importMany(name: string, meals: number): void;
  backup(name: string): Promise<string>;
  restore(name: string, text: string): Promise<string>;
}

const stores = new Map<string, Store>();
const heardBy = new Map<string, string[]>();

async function storeOf(name: string): Promise<Store> {
  const known = stores.get(name);
  if (known !== undefined) return known;
  const store = await got(openDexieStore({ name }));
  stores.set(name, store);
  const heard: string[] = [];
  heardBy.set(name, heard);
  store.subscribe(["meals"], (tables) => heard.push(tables.join()));
  return store;
}

async function check(name: string): Promise<string | null> {
  const opened: Store[] = [];
  const fresh = async () => {
    const store = await got(openDexieStore({ name: `fact-${crypto.randomUUID()}` }));
    opened.push(store);
    return store;
  };
  const fact = STORE_CONTRACT.find((one) => one.name === name);
  try {
    if (fact === undefined) return "no such fact";
    await fact.check(await fresh(), fresh);
    return null;
  } catch (cause) {
    return String(cause);
  } finally {
    opened.forEach((store) => store.close());
  }
}

async function writeForEver(name: string): Promise<void> {
  const store = await storeOf(name);
  for (let i = 0; ; i += 1) {
    const id = `m${i}`;
    const photo = photoOf(
      `p${i}`,
      Array.from({ length: 2000 }, (_, k) => (i + k) & 255),
    );
    await got(store.save({ meals: [mealAt(id, i, { photoIds: [photo.id] })], photos: [photo] }));
    console.log(`acknowledged ${id}`);
  }
}

async function importMany(name: string, count: number): Promise<void> {
  const store = await storeOf(name);
  const records = manyMeals(count).map((meal): BackupRecord => {
    return { table: "meals", id: meal.id, demo: false, changedAt: meal.changedAt, value: { ...meal } };
  });
  const plan = planImport(await got(store.existingRecords()), {
    writtenAt: records[0]?.changedAt ?? "",
    records,
  });
  console.log("import begins");
  await got(store.applyImport(plan));
  console.log("import acknowledged");
}

async function bestOf(times: number, task: () => unknown): Promise<number> {
  let best = Infinity;
  for (let i = 0; i < times; i += 1) {
    const start = performance.now();
    await task();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

const page: StorePage = {
  facts: STORE_CONTRACT.map((fact) => fact.name),
  check,
  async open(name) {
    const opened = await openDexieStore({ name });
    if (!opened.ok) return opened.error.kind;
    stores.set(name, opened.value);
    return opened.value.wasLost ? "open, but lost" : "open";
  },
  async isClosed(name) {
    const count = await stores.get(name)?.countMeals();
    return count?.ok === false && count.error.kind === "closed";
  },
  writeForEver: (name) => void writeForEver(name),
  async mealIds(name) {
    const store = await storeOf(name);
    const all = await got(store.listMeals({ limit: 1_000_000 }));
    for (const meal of all.items) for (const photo of meal.photoIds) await got(store.getPhoto(photo));
    return { ids: all.items.map(({ id }) => id), setAside: all.setAside.length };
  },
  async fillUp(name) {
    const store = await storeOf(name);
    for (let photos = 0; ; photos += 1) {
      const photo = { ...photoOf(`big${photos}`, []), bytes: new Uint8Array(2 ** 20) };
      // Fresh chance in every part: the browser packs what repeats.
      for (let from = 0; from < photo.bytes.length; from += 65_536)
        crypto.getRandomValues(photo.bytes.subarray(from, from + 65_536));
      const saved = await store.save({ photos: [photo] });
      if (!saved.ok) return { photos, kind: saved.error.kind };
    }
  },
  async deletePhotos(name) {
    const store = await storeOf(name);
    const { items } = await got(store.listPhotos());
    await got(
      store.deletePhotos(
        items.map(({ id }) => id),
        mealAt("x", 1).at,
      ),
    );
  },
  async saveMeal(name, id) {
    const saved = await (await storeOf(name)).save({ meals: [mealAt(id, 1)] });
    return saved.ok ? "kept" : saved.error.kind;
  },
  async measure(name, count) {
    const store = await storeOf(name);
    const meals = manyMeals(count);
    for (let from = 0; from < count; from += 1000)
      await got(store.save({ meals: meals.slice(from, from + 1000) }));
    const index = meals.map(indexMeal);
    const firstPageMs = await bestOf(9, () => got(store.listMeals({ limit: 50 })));
    const keyPressMs = await bestOf(9, () =>
      searchMeals(index, { text: "brühe no. 12", verdict: "uncertain" }),
    );
    return { firstPageMs, keyPressMs };
  },
  importMany: (name, count) => void importMany(name, count),
  heard: (name) => heardBy.get(name) ?? [],
  async backup(name) {
    const contents = await got((await storeOf(name)).exportContents(mealAt("x", 59).at));
    const text = await writeBackup(contents, sha256);
    if (!text.ok) throw new Error(text.error.kind);
    return text.value;
  },
  async restore(name, text) {
    const store = await storeOf(name);
    const contents = await readBackup(text, sha256);
    if (!contents.ok) return contents.error.kind;
    const plan = planImport(await got(store.existingRecords()), contents.value);
    const done = await store.applyImport(plan);
    return done.ok ? "restored" : done.error.kind;
  },
};

(globalThis as unknown as { storePage: StorePage }).storePage = page;
