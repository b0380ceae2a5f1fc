/** Records that fail their check are moved apart: reported, kept, and tried again by the next version. */
import { ok } from "../kernel/result.js";
import { ENGINE_TABLES, type Engine, type EngineTable, type EngineTransaction, type Row } from "./engine.js";
import type { Parse } from "../meals/parseWith.js";
import { PARSERS, causeOf, checkOut, type BadRow } from "./records.js";
import { ALL } from "./rows.js";
import { StoreRefusal, type SetAsideRecord, type Stored } from "./storeError.js";
import { STORE_TABLES, type StoreTable } from "./storeTypes.js";

type CheckedTable = Exclude<EngineTable, "setAside">;

/** What a set-aside row holds: the row as it was, and why it is here. */
interface SetAsideValue extends SetAsideRecord {
  readonly row: Row;
}

/** The table that a listener knows for a table of the engine. */
export function listenersTable(table: EngineTable): StoreTable {
  if (table === "sniffNotes") return "sniffs";
  if (table === "photoBytes") return "photos";
  return table === "noseEvents" ? "noses" : table;
}

/** Reads and checks; bad rows are set aside after the reading and named in the answer. */
export async function readChecked<T>(
  engine: Engine,
  table: CheckedTable,
  work: (tx: EngineTransaction) => Promise<{ value: T; bad: readonly BadRow[] }>,
  otherTables: readonly EngineTable[] = [],
): Stored<{ value: T; setAside: readonly SetAsideRecord[] }> {
  const outcome = await engine.read([table, ...otherTables], work);
  if (!outcome.ok) return outcome;
  const { value, bad } = outcome.value;
  // If moving them fails, they are named all the same, and the next reading tries again.
  if (bad.length > 0) await moveAside(engine, table, bad);
  return ok({ value, setAside: bad.map(({ row, cause }) => ({ table, id: row.id, cause })) });
}

/** Reads a whole table in the order of its index. */
export function readBucket<T>(
  engine: Engine,
  table: CheckedTable,
  bucket: string,
  parse: Parse<T>,
  oldestFirst: boolean,
): Stored<{ value: T[]; setAside: readonly SetAsideRecord[] }> {
  return readChecked(engine, table, async (tx) => {
    const { sound, bad } = checkOut(parse, await tx.range(table, bucket, { oldestFirst }));
    return { value: sound, bad };
  });
}

/** One record; refuses with `unknownId` if it is not here, with `corrupt` if it is set aside or ought to be. */
export async function readOne<T>(
  engine: Engine,
  table: CheckedTable,
  id: string,
  parse: Parse<T>,
): Stored<T> {
  const outcome = await engine.read([table, "setAside"], (tx) => getOne(tx, table, id, parse));
  if (!outcome.ok && outcome.error.kind === "corrupt") await moveAsideById(engine, table, id);
  return outcome;
}

/** The same inside a transaction that also holds `setAside`. */
export async function getOne<T>(
  tx: EngineTransaction,
  table: CheckedTable,
  id: string,
  parse: Parse<T>,
): Promise<T> {
  const row = await tx.get(table, id);
  if (row === undefined) {
    const aside = (await tx.get("setAside", asideId(table, id)))?.value as SetAsideValue | undefined;
    if (aside === undefined) throw new StoreRefusal({ kind: "unknownId", table, id });
    throw new StoreRefusal({ kind: "corrupt", table, id, cause: aside.cause });
  }
  const checked = parse(row.value);
  if (checked.ok) return checked.value;
  throw new StoreRefusal({ kind: "corrupt", table, id, cause: causeOf(checked.error) });
}

/** What is set aside now. */
export function listSetAside(engine: Engine): Stored<SetAsideRecord[]> {
  return engine.read(["setAside"], async (tx) =>
    (await tx.all("setAside")).map((row) => {
      const { table, id, cause } = row.value as SetAsideValue;
      return { table, id, cause };
    }),
  );
}

/** Puts back what this version can read; an older or a mended check may have set it aside. */
export async function retrySetAside(engine: Engine): Stored<number> {
  const aside = await listSetAside(engine);
  if (!aside.ok) return aside;
  if (aside.value.length === 0) return ok(0);
  return engine.write([...ENGINE_TABLES], STORE_TABLES, async (tx) => {
    let back = 0;
    for (const one of await tx.all("setAside")) {
      const { table, row } = one.value as SetAsideValue & { table: CheckedTable };
      const readable = PARSERS[table]?.(row.value).ok === true;
      if (!readable || (await tx.get(table, row.id)) !== undefined) continue;
      await tx.put(table, [row]);
      await tx.remove("setAside", [one.id]);
      back += 1;
    }
    return back;
  });
}

/** Writes rows straight to the set-aside table, for an import that holds records that this version cannot read. */
export function putAside(tx: EngineTransaction, table: CheckedTable, bad: readonly BadRow[]): Promise<void> {
  return tx.put(
    "setAside",
    bad.map(({ row, cause }) => asideRow(table, row, cause)),
  );
}

/** A bad row as it lies in the set-aside table: whole, with the reason. */
export function asideRow(table: string, row: Row, cause: string): Row {
  const value: SetAsideValue = { table, id: row.id, cause, row };
  return { id: asideId(table, row.id), bucket: ALL, atMs: row.atMs, demo: row.demo, value };
}

function moveAside(engine: Engine, table: CheckedTable, bad: readonly BadRow[]): Stored<void> {
  return engine.write([table, "setAside"], [listenersTable(table), "setAside"], async (tx) => {
    for (const { row } of bad) await moveOne(tx, table, row.id);
  });
}

function moveAsideById(engine: Engine, table: CheckedTable, id: string): Stored<void> {
  return engine.write([table, "setAside"], [listenersTable(table), "setAside"], (tx) =>
    moveOne(tx, table, id),
  );
}

/** Checked again inside the writing transaction: another tab may have mended it in between. */
async function moveOne(tx: EngineTransaction, table: CheckedTable, id: string): Promise<void> {
  const row = await tx.get(table, id);
  if (row === undefined) return;
  const checked = PARSERS[table](row.value);
  if (checked.ok) return;
  await putAside(tx, table, [{ row, cause: causeOf(checked.error) }]);
  await tx.remove(table, [id]);
}

function asideId(table: string, id: string): string {
  return `${table}:${id}`;
}
