/** A backup as a file: out of the store, and in from the person's hand. */
import { MAX_BACKUP_CHARS, readBackup, writeBackup, type BackupError } from "../../meals/backup.js";
import type { BackupContents } from "../../meals/backupContents.js";
import { err, ok, type Result } from "../../kernel/result.js";
import { sha256 } from "../../store/sha256.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import { fileName } from "../files.js";

/** UTF-8 takes at most three bytes for one UTF-16 unit. */
const MAX_BACKUP_BYTES = 3 * MAX_BACKUP_CHARS;

/** Everything that is kept, as one file. Plain text: that is what a system's share sheet takes. */
export async function backupFile(
  store: Pick<Store, "exportContents">,
  at: string,
  withPhotos: boolean,
): Promise<Result<File, StoreError | BackupError>> {
  const contents = await store.exportContents(at, { withoutPhotos: !withPhotos });
  if (!contents.ok) return contents;
  const text = await writeBackup(contents.value, sha256);
  if (!text.ok) return text;
  const name = fileName("nidor-backup", at.slice(0, 16), withPhotos ? "" : "no-photos");
  return ok(new File([text.value], `${name.replace(/-+$/, "")}.txt`, { type: "text/plain" }));
}

/** Reads and checks a file; nothing is changed by it. */
export async function readBackupFile(file: File): Promise<Result<BackupContents, BackupError>> {
  if (file.size > MAX_BACKUP_BYTES) return err({ kind: "tooLarge" });
  const text = await textOf(file);
  return text === null ? err({ kind: "damaged" }) : readBackup(text, sha256);
}

/** null if it cannot be read: gone since it was chosen, or longer than a string can be. */
async function textOf(file: File): Promise<string | null> {
  try {
    return await file.text();
  } catch {
    return null;
  }
}
