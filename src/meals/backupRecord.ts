/** One line of a backup file. */
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import { BACKUP_TABLES, type BackupRecord } from "./backupContents.js";
import { fromBase64, toBase64 } from "./base64.js";
import { canonicalJson } from "./canonicalJson.js";

const lineSchema = v.object({
  table: v.picklist(BACKUP_TABLES, "is of an unknown kind"),
  id: v.pipe(v.string(), v.nonEmpty("has no id"), v.maxLength(1000, "has too long an id")),
  demo: v.boolean(),
  changedAt: v.nullable(v.pipe(v.string(), v.isoTimestamp("has no date of change"))),
  value: v.pipe(
    v.custom<Readonly<Record<string, unknown>>>(
      (value) => typeof value === "object" && value !== null && !Array.isArray(value),
      "holds no object",
    ),
  ),
  base64: v.optional(v.string()),
});

/** A record as one line of canonical JSON, a photo's bytes as base64. */
export function writeBackupRecord({ table, id, demo, changedAt, value, bytes }: BackupRecord): string {
  const base64 = bytes === undefined ? undefined : toBase64(bytes);
  return canonicalJson({ table, id, demo, changedAt, value, base64 });
}

/** Checks one parsed line; the error says why. Whether `value` is a sound meal or sniff, its own station checks. */
export function parseBackupRecord(line: unknown): Result<BackupRecord, string> {
  const checked = v.safeParse(lineSchema, line, { abortEarly: true });
  if (!checked.success) return err(checked.issues[0].message);
  const { base64, ...record } = checked.output;
  if ((base64 === undefined) === (record.table === "photos"))
    return err("has bytes where it should not, or none");
  if (base64 === undefined) return ok(record);
  const bytes = fromBase64(base64);
  return bytes === undefined ? err("has bytes that cannot be read") : ok({ ...record, bytes });
}
