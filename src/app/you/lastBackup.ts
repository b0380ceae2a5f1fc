/**
 * When the last backup was saved from this browser. It is kept apart from the data, so that two backups of the same
 * data are the same and a restored phone does not claim a backup that it never made.
 */
import { inStorage } from "../inStorage.js";

const KEY = "nidor-last-backup";

export const lastBackupAt = (): string | null => inStorage((storage) => storage.getItem(KEY));

export const noteBackup = (at: string): void => void inStorage((storage) => storage.setItem(KEY, at));

export const forgetBackups = (): void => void inStorage((storage) => storage.removeItem(KEY));
