/** The whole of the data, out to a backup and in from one. */
import {
  BACKUP_TABLES,
  type BackupRecord,
  type BackupTable,
  type ExistingRecord,
  type ImportPlan,
} from "../meals/backupContents.js";
import { type Breathe, WITHOUT_BREATH } from "../kernel/breathe.js";
import { ok } from "../kernel/result.js";
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
    exportContents: async (writtenAt, { withoutPhotos = false, breathe = WITHOUT_BREATH } = {}) => {
      const tables = BACKUP_TABLES.filter((table) => table !== "photos" || !withoutPhotos);
      const found = await engine.read([...ENGINE_TABLES], (tx) => allRows(tx, tables));
      return found.ok ? ok({ writtenAt, records: await recordsOf(found.value, breathe) }) : found;
    },
    existingRecords: async (breathe = WITHOUT_BREATH) => {
      const found = await engine.read([...ENGINE_TABLES], (tx) => allRows(tx, BACKUP_TABLES, true));
      if (!found.ok) return found;
      const existing: ExistingRecord[] = [];
      for (const { table, id, changedAt, ...rest } of await recordsOf(found.value, breathe)) {
        existing.push({ table, id, changedAt, fingerprint: fingerprintOf(rest) });
        await breathe();
      }
      return ok(existing);
    },
    applyImport: (plan) => engine.write([...ENGINE_TABLES], STORE_TABLES, (tx) => carryOut(tx, plan)),
  };
}

/** A row of a table, with the octets of a photo. */
interface FoundRow {
  readonly table: BackupTable;
  readonly row: Row;
  readonly bytes?: Uint8Array;
}

/** In the order of tables and ids. */
async function allRows(
  tx: EngineTransaction,
  tables: readonly BackupTable[],
  withDeleted = false,
): Promise<FoundRow[]> {
  const found: FoundRow[] = [];
  for (const table of tables) {
    for (const row of await tx.all(table)) {
      if (row.bucket === DELETED && !withDeleted) continue;
      found.push(table === "photos" ? { table, row, bytes: await photoBytes(tx, row.id) } : { table, row });
    }
  }
  return found;
}

/** Sound records, then bad rows as records of `setAside`. No transaction may wait for them: a breath would end it. */
async function recordsOf(found: readonly FoundRow[], breathe: Breathe): Promise<BackupRecord[]> {
  const records: BackupRecord[] = [];
  const bad: BackupRecord[] = [];
  for (const { table, row, bytes } of found) {
    const record = recordOf(table, row);
    if (record.table !== table) bad.push(record);
    else records.push(bytes === undefined ? record : { ...record, bytes });
    await breathe();
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

async function photoBytes(tx: EngineTransaction, id: string): Promise<Uint8Array> {
  const row = await tx.get("photoBytes", id);
  const { bytes } = (row?.value ?? {}) as { bytes?: unknown };
  return bytes instanceof Uint8Array ? bytes : new Uint8Array();
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
