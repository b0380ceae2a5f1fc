/**
 * When the last backup was saved from this browser. It is kept apart from the data, so that two backups of the same
 * data are the same and a restored phone does not claim a backup that it never made.
 */
const KEY = "nidor-last-backup";

export const lastBackupAt = (): string | null => inStorage((storage) => storage.getItem(KEY));

export const noteBackup = (at: string): void => void inStorage((storage) => storage.setItem(KEY, at));

export const forgetBackups = (): void => void inStorage((storage) => storage.removeItem(KEY));

/** null where the browser keeps nothing here, as in some private windows. */
function inStorage<T>(use: (storage: Storage) => T): T | null {
  try {
    return use(localStorage);
  } catch {
    return null;
  }
}
