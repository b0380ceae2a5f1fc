import type { BackupRecord } from "./backupContents.js";
import { canonicalJson } from "./canonicalJson.js";
import { crc32 } from "./crc32.js";

/**
 * Tells a record from another version of itself: lengths and CRC-32 of its canonical JSON and of its bytes.
 * Two versions that differ share one with a chance of about 1 in 4 billion.
 */
export function fingerprintOf(record: Pick<BackupRecord, "value" | "bytes">): string {
  const text = canonicalJson(record.value);
  const units = Uint16Array.from({ length: text.length }, (_, i) => text.charCodeAt(i));
  const own = `${text.length}-${crc32(new Uint8Array(units.buffer)).toString(16)}`;
  if (record.bytes === undefined) return own;
  return `${own}-${record.bytes.length}-${crc32(record.bytes).toString(16)}`;
}
