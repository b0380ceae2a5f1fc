/** What a use of localStorage gives; null where the browser keeps nothing here, as in some private windows. */
export function inStorage<T>(use: (storage: Storage) => T): T | null {
  try {
    return use(localStorage);
  } catch {
    return null;
  }
}
