import { ok } from "../kernel/result.js";
import type { Meal } from "../meals/meal.js";
import { parseMeal } from "../meals/parseMeal.js";
import type { Engine, EngineTransaction, Row, RowRange } from "./engine.js";
import { checkOut, type BadRow } from "./records.js";
import { DELETED, LIVE, mealRow } from "./rows.js";
import { getOne, readChecked, readOne } from "./setAside.js";
import type { MealStore } from "./store.js";
import type { MealQuery, PageCursor } from "./storeTypes.js";

const DEFAULT_LIMIT = 50;

/** How many rows are read at a time where most may be passed over: few enough that no tap waits for them. */
const BATCH = 100;

/** The calls on meals. */
export function mealCalls(engine: Engine): MealStore {
  return {
    getMeal: (id) => readOne(engine, "meals", id, parseMeal),
    async listMeals(query = {}) {
      const outcome = await readChecked(engine, "meals", (tx) => onePage(tx, query));
      if (!outcome.ok) return outcome;
      return ok({ ...outcome.value.value, setAside: outcome.value.setAside });
    },
    countMeals: ({ withoutDemo = false } = {}) =>
      engine.read(["meals"], async (tx) => {
        const all = await tx.count("meals", LIVE);
        return withoutDemo ? all - (await liveDemo(tx)) : all;
      }),
    deleteMeal: (id, deletedAt) =>
      change(engine, id, (meal) => ({ ...meal, deletedAt, changedAt: deletedAt })),
    restoreMeal: (id, changedAt) =>
      change(engine, id, ({ deletedAt: _deletedAt, ...meal }) => ({ ...meal, changedAt })),
    purgeDeletedMeals: (deletedBefore) =>
      engine.write(["meals", "photos", "photoBytes"], ["meals", "photos"], (tx) => purge(tx, deletedBefore)),
  };
}

/** Demo meals that are not deleted. */
async function liveDemo(tx: EngineTransaction): Promise<number> {
  const rows = await Promise.all((await tx.demoIds("meals")).map((id) => tx.get("meals", id)));
  return rows.filter((row) => row?.bucket === LIVE).length;
}

interface Found {
  items: Meal[];
  next: PageCursor | null;
}

async function onePage(
  tx: EngineTransaction,
  query: MealQuery,
): Promise<{ value: Found; bad: readonly BadRow[] }> {
  const limit = query.limit ?? DEFAULT_LIMIT;
  const items: Meal[] = [];
  const bad: BadRow[] = [];
  // What is wanted and no more: a row that is read for nothing costs as much as one that is shown.
  const batch = query.filter === undefined ? Math.max(1, limit) : BATCH;
  let after = query.after;
  for (;;) {
    const rows = await tx.range("meals", LIVE, rangeOf(query, batch, after));
    for (const row of rows) {
      after = { atMs: row.atMs, id: row.id };
      const checked = checkOut(parseMeal, [row]);
      bad.push(...checked.bad);
      items.push(...checked.sound.filter((meal) => query.filter?.(meal) ?? true));
      if (items.length >= limit) return { value: { items, next: after }, bad };
    }
    if (rows.length < batch) return { value: { items, next: null }, bad };
  }
}

function rangeOf(query: MealQuery, limit: number, after: PageCursor | undefined): RowRange {
  return {
    limit,
    ...(query.fromAt === undefined ? {} : { fromMs: Date.parse(query.fromAt) }),
    ...(query.beforeAt === undefined ? {} : { beforeMs: Date.parse(query.beforeAt) }),
    ...(after === undefined ? {} : { after }),
  };
}

function change(engine: Engine, id: string, edit: (meal: Meal) => Meal) {
  return engine.write(["meals", "setAside"], ["meals"], async (tx) => {
    const meal = await getOne(tx, "meals", id, parseMeal);
    const demo = (await tx.get("meals", id))?.demo ?? 0;
    await tx.put("meals", [mealRow(edit(meal), { demo })]);
  });
}

async function purge(tx: EngineTransaction, deletedBefore: string): Promise<number> {
  const limitMs = Date.parse(deletedBefore);
  const old = (await tx.range("meals", DELETED)).filter((row) => deletedMs(row) < limitMs);
  if (old.length === 0) return 0;
  const ids = new Set(old.map((row) => row.id));
  const held = await heldPhotos(tx, ids);
  const photos = old.flatMap(photoIdsOf).filter((photo) => !held.has(photo));
  await tx.remove("meals", [...ids]);
  await tx.remove("photos", photos);
  await tx.remove("photoBytes", photos);
  return ids.size;
}

/** Photos of all meals but some, read batch by batch. */
async function heldPhotos(tx: EngineTransaction, but: ReadonlySet<string>): Promise<ReadonlySet<string>> {
  const held = new Set<string>();
  for (const bucket of [LIVE, DELETED])
    for (let after: PageCursor | null = null; ;) {
      const rows: Row[] = await tx.range("meals", bucket, { limit: BATCH, ...(after && { after }) });
      rows.filter(({ id }) => !but.has(id)).forEach((row) => photoIdsOf(row).forEach((id) => held.add(id)));
      const last = rows.at(-1);
      if (rows.length < BATCH || last === undefined) break;
      after = { atMs: last.atMs, id: last.id };
    }
  return held;
}

function deletedMs(row: Row): number {
  const { deletedAt } = row.value as { deletedAt?: unknown };
  return typeof deletedAt === "string" ? Date.parse(deletedAt) : NaN;
}

/** The photos of a row whose value has not been checked. */
export function photoIdsOf(row: Row): string[] {
  const { photoIds } = row.value as { photoIds?: unknown };
  return Array.isArray(photoIds) ? photoIds.filter((id) => typeof id === "string") : [];
}
