import type { Row, RowRange } from "./engine.js";

/** The order of the index within a bucket: by time, then by id, code unit by code unit as IndexedDB does. */
export function rowOrder(left: Row, right: Row): number {
  if (left.atMs !== right.atMs) return left.atMs - right.atMs;
  if (left.id === right.id) return 0;
  return left.id < right.id ? -1 : 1;
}

/** Does a row of the right bucket lie in the range? */
export function inRange(row: Row, range: RowRange): boolean {
  if (range.fromMs !== undefined && row.atMs < range.fromMs) return false;
  if (range.beforeMs !== undefined && row.atMs >= range.beforeMs) return false;
  if (range.after === undefined) return true;
  const side = rowOrder(row, { ...row, ...range.after });
  return range.oldestFirst === true ? side > 0 : side < 0;
}
