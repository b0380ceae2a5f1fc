/** The whole of the data, out to a backup and in from one. */
import {
  BACKUP_TABLES,
  type BackupContents,
  type BackupRecord,
  type BackupTable,
  type ExistingRecord,
  type ImportPlan,
} from "../meals/backupContents.js";
import { fingerprintOf } from "../meals/fingerprint.js";
import { recordsToWrite } from "../meals/importPlan.js";
import { ENGINE_TABLES, type Engine, type EngineTransaction, type Row } from "./engine.js";
import { causeOf, PARSERS, type BadRow } from "./records.js";
import { DELETED, rowOfRecord } from "./rows.js";
import { asideRow, putAside } from "./setAside.js";
import { addMissingNotes } from "./sniffCalls.js";
import type { WholeStore } from "./store.js";
import { STORE_TABLES } from "./storeTypes.js";

/** The calls that carry a backup. */
export function backupCalls(
  engine: Engine,
): Pick<WholeStore, "exportContents" | "existingRecords" | "applyImport"> {
  return {
    exportContents: (writtenAt, options = {}) =>
      engine.read([...ENGINE_TABLES], async (tx): Promise<BackupContents> => {
        const tables = BACKUP_TABLES.filter((table) => table !== "photos" || options.withoutPhotos !== true);
        return { writtenAt, records: await allRecords(tx, tables) };
      }),
    existingRecords: () =>
      engine.read([...ENGINE_TABLES], async (tx): Promise<ExistingRecord[]> => {
        const records = await allRecords(tx, BACKUP_TABLES, true);
        return records.map(({ table, id, changedAt, ...rest }) => {
          return { table, id, changedAt, fingerprint: fingerprintOf(rest) };
        });
      }),
    applyImport: (plan) => engine.write([...ENGINE_TABLES], STORE_TABLES, (tx) => carryOut(tx, plan)),
  };
}

/** Sound records, and bad rows as records of `setAside`; in the order of tables and ids. */
async function allRecords(
  tx: EngineTransaction,
  tables: readonly BackupTable[],
  withDeleted = false,
): Promise<BackupRecord[]> {
  const records: BackupRecord[] = [];
  const bad: BackupRecord[] = [];
  for (const table of tables) {
    for (const row of await tx.all(table)) {
      if (row.bucket === DELETED && !withDeleted) continue;
      const record = recordOf(table, row);
      if (record.table !== table) bad.push(record);
      else records.push(table === "photos" ? await withBytes(tx, record) : record);
    }
  }
  return [...records, ...bad];
}

/** A bad row that no list has met yet goes out as if it were set aside already. */
function recordOf(table: BackupTable, row: Row): BackupRecord {
  const checked = table === "setAside" ? undefined : PARSERS[table](row.value);
  const out = checked?.ok === false ? asideRow(table, row, causeOf(checked.error)) : row;
  const value = out.value as Readonly<Record<string, unknown>>;
  return {
    table: out === row ? table : "setAside",
    id: out.id,
    demo: out.demo === 1,
    changedAt: changedAtOf(value),
    value,
  };
}

function changedAtOf(value: Readonly<Record<string, unknown>>): string | null {
  const changedAt = value["changedAt"] ?? value["lastSeenAt"];
  return typeof changedAt === "string" ? changedAt : null;
}

async function withBytes(tx: EngineTransaction, record: BackupRecord): Promise<BackupRecord> {
  const row = await tx.get("photoBytes", record.id);
  const { bytes } = (row?.value ?? {}) as { bytes?: unknown };
  return { ...record, bytes: bytes instanceof Uint8Array ? bytes : new Uint8Array() };
}

async function carryOut(tx: EngineTransaction, plan: ImportPlan): Promise<void> {
  const records = recordsToWrite(plan);
  for (const table of BACKUP_TABLES) {
    const those = records.filter((record) => record.table === table);
    if (table === "setAside") await tx.put(table, those.map(rowOfRecord));
    else await putRecords(tx, table, those);
  }
  await addMissingNotes(tx);
}

async function putRecords(
  tx: EngineTransaction,
  table: Exclude<BackupTable, "setAside">,
  records: readonly BackupRecord[],
): Promise<void> {
  const { good, bad } = sorted(table, records);
  await putAside(tx, table, bad);
  await tx.put(table, good.map(rowOfRecord));
  if (table !== "photos") return;
  const bytesRows = good.map((record) => {
    return { ...rowOfRecord(record), value: { bytes: record.bytes ?? new Uint8Array() } };
  });
  await tx.put("photoBytes", bytesRows);
}

/** A record that this version cannot read is no reason to refuse the others. */
function sorted(table: Exclude<BackupTable, "setAside">, records: readonly BackupRecord[]) {
  const good: BackupRecord[] = [];
  const bad: BadRow[] = [];
  for (const record of records) {
    const checked = PARSERS[table](record.value);
    if (checked.ok) good.push(record);
    else bad.push({ row: rowOfRecord(record), cause: causeOf(checked.error) });
  }
  return { good, bad };
}
