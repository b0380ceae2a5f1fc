/**
 * The backup file: JSON Lines in UTF-8. The first line says what it is and how much it holds, then one record a
 * line in canonical JSON, and the last line holds the SHA-256 of all the text before it. The same contents always
 * make the same bytes. Nothing in it is compressed, so that nothing can unfold beyond the size of the file.
 */
import { type Breathe, WITHOUT_BREATH } from "../kernel/breathe.js";
import { deeperThan } from "../kernel/jsonDepth.js";
import { err, ok, type Result } from "../kernel/result.js";
import { BACKUP_TABLES, type BackupContents, type BackupRecord } from "./backupContents.js";
import { parseBackupRecord, writeBackupRecord } from "./backupRecord.js";
import { canonicalJson } from "./canonicalJson.js";

export const BACKUP_FORMAT = "nidor-backup/1";

/** The largest backup that is written or read: JavaScript engines hold no string much longer than this. */
export const MAX_BACKUP_CHARS = 400 * 1024 * 1024;
export const MAX_BACKUP_RECORDS = 500_000;
/** Objects within objects; our own records use less than a dozen. */
export const MAX_BACKUP_DEPTH = 64;

/** SHA-256 of a text's UTF-8 bytes, as lower-case hexadecimal; given by the edge, which has the browser's own. */
export type Digest = (text: string) => Promise<string>;

/** Why a file is no backup that can be brought in. Nothing is changed by reading. */
export type BackupError =
  | { readonly kind: "tooLarge" } // leave photos out, or delete some
  | { readonly kind: "notABackup" } // another kind of file: choose the right one
  | { readonly kind: "newerFormat"; readonly format: string } // written by a newer Nidor: reload to get it
  | { readonly kind: "damaged" } // cut short or changed since it was written: use another copy
  | { readonly kind: "badRecord"; readonly line: number; readonly cause: string }; // sound file, strange content

/** Writes a backup. Fails only for size. */
export async function writeBackup(
  contents: BackupContents,
  digest: Digest,
  breathe: Breathe = WITHOUT_BREATH,
): Promise<Result<string, BackupError>> {
  const lines: string[] = [];
  for (const record of [...contents.records].sort(recordOrder)) {
    lines.push(writeBackupRecord(record));
    await breathe();
  }
  const head = canonicalJson({
    format: BACKUP_FORMAT,
    records: lines.length,
    writtenAt: contents.writtenAt,
  });
  const chars = lines.reduce((sum, line) => sum + line.length + 1, head.length + 1);
  if (chars > MAX_BACKUP_CHARS || lines.length > MAX_BACKUP_RECORDS) return err({ kind: "tooLarge" });
  const body = [head, ...lines, ""].join("\n");
  return ok(`${body}${canonicalJson({ sha256: await digest(body) })}\n`);
}

/** Reads a backup, and gives every record or none. */
export async function readBackup(
  text: string,
  digest: Digest,
  breathe: Breathe = WITHOUT_BREATH,
): Promise<Result<BackupContents, BackupError>> {
  if (text.length > MAX_BACKUP_CHARS + 200) return err({ kind: "tooLarge" });
  const head = parseHead(text.slice(0, Math.max(0, text.indexOf("\n"))));
  if (!head.ok) return head;
  const bodyEnd = text.lastIndexOf("\n", text.length - 2) + 1;
  const body = text.slice(0, bodyEnd);
  if (text.slice(bodyEnd) !== `${canonicalJson({ sha256: await digest(body) })}\n`)
    return err({ kind: "damaged" });
  const lines = body.split("\n").slice(1, -1);
  if (lines.length !== head.value.records) return err({ kind: "damaged" });
  if (lines.length > MAX_BACKUP_RECORDS) return err({ kind: "tooLarge" });
  const records = await parseRecords(lines, breathe);
  return records.ok ? ok({ writtenAt: head.value.writtenAt, records: records.value }) : records;
}

function parseHead(line: string): Result<{ writtenAt: string; records: number }, BackupError> {
  const { format, writtenAt, records } = (parsed(line) ?? {}) as Record<string, unknown>;
  if (typeof format !== "string" || !format.startsWith("nidor-backup/")) return err({ kind: "notABackup" });
  if (format !== BACKUP_FORMAT) return err({ kind: "newerFormat", format });
  if (typeof writtenAt !== "string" || typeof records !== "number") return err({ kind: "damaged" });
  return ok({ writtenAt, records });
}

async function parseRecords(
  lines: readonly string[],
  breathe: Breathe,
): Promise<Result<BackupRecord[], BackupError>> {
  const records: BackupRecord[] = [];
  const seen = new Set<string>();
  for (const [i, lineText] of lines.entries()) {
    const record = parseBackupRecord(parsed(lineText));
    const refuse = (cause: string) => err<BackupError>({ kind: "badRecord", line: i + 2, cause });
    if (!record.ok) return refuse(record.error);
    const key = `${record.value.table}:${record.value.id}`;
    if (seen.has(key)) return refuse("is in the file twice");
    seen.add(key);
    records.push(record.value);
    await breathe();
  }
  return ok(records);
}

function parsed(lineText: string): unknown {
  if (deeperThan(lineText, MAX_BACKUP_DEPTH)) return undefined;
  try {
    return JSON.parse(lineText);
  } catch {
    return undefined;
  }
}

function recordOrder(left: BackupRecord, right: BackupRecord): number {
  const tables = BACKUP_TABLES.indexOf(left.table) - BACKUP_TABLES.indexOf(right.table);
  if (tables !== 0) return tables;
  return left.id < right.id ? -1 : 1;
}
