/** A backup as a file: out of the store, and in from the person's hand. */
import { MAX_BACKUP_CHARS, readBackup, writeBackup, type BackupError } from "../../meals/backup.js";
import type { BackupContents } from "../../meals/backupContents.js";
import type { Breathe } from "../../kernel/breathe.js";
import { err, ok, type Result } from "../../kernel/result.js";
import { sha256 } from "../../store/sha256.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import { breather } from "../breather.js";
import { fileName } from "../files.js";
import { encoded } from "./encoded.js";

/** UTF-8 takes at most three bytes for one UTF-16 unit. */
const MAX_BACKUP_BYTES = 3 * MAX_BACKUP_CHARS;

/** Everything that is kept, as one file. Plain text: that is what a system's share sheet takes. */
export async function backupFile(
  store: Pick<Store, "exportContents">,
  at: string,
  withPhotos: boolean,
): Promise<Result<File, StoreError | BackupError>> {
  const breathe = breather();
  const contents = await store.exportContents(at, { withoutPhotos: !withPhotos, breathe });
  if (!contents.ok) return contents;
  const text = await writeBackup(contents.value, digestOf(breathe), breathe);
  if (!text.ok) return text;
  const name = fileName("nidor-backup", at.slice(0, 16), withPhotos ? "" : "no-photos");
  const octets = await encoded(text.value, breathe);
  return ok(new File([octets], `${name.replace(/-+$/, "")}.txt`, { type: "text/plain" }));
}

/** Reads and checks a file; nothing is changed by it. */
export async function readBackupFile(file: File): Promise<Result<BackupContents, BackupError>> {
  if (file.size > MAX_BACKUP_BYTES) return err({ kind: "tooLarge" });
  const text = await textOf(file);
  if (text === null) return err({ kind: "damaged" });
  const breathe = breather();
  return readBackup(text, digestOf(breathe), breathe);
}

const digestOf = (breathe: Breathe) => async (text: string) => sha256(await encoded(text, breathe));

/** null if it cannot be read: gone since it was chosen, or longer than a string can be. */
async function textOf(file: File): Promise<string | null> {
  try {
    return await file.text();
  } catch {
    return null;
  }
}
