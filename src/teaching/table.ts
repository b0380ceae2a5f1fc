/** What is taught on, as one table: a row a sniff. */
export interface Table {
  readonly rows: number;
  readonly features: number;
  readonly groups: number;
  /** Standardised features, shape [rows, features]. */
  readonly x: Float64Array;
  /** 1 present, 0 absent, -1 unknown, shape [rows, groups]. */
  readonly truth: Int8Array;
  /** How much a row counts; 0 for a row that is held out, shape [rows]. */
  readonly weight: Float64Array;
}

/** One row of a table's features, as a view. */
export function rowOf(table: { x: Float64Array; features: number }, row: number): Float64Array {
  return table.x.subarray(row * table.features, (row + 1) * table.features);
}

/** Rows that count: those that are not held out. */
export function countingRows({ rows, weight }: Pick<Table, "rows" | "weight">): number[] {
  const counting: number[] = [];
  for (let row = 0; row < rows; row += 1) if (weight[row]! > 0) counting.push(row);
  return counting;
}

/** Rows that count and whose truth is known for a group. */
export function knownRows(table: Table, group: number): number[] {
  return countingRows(table).filter((row) => table.truth[row * table.groups + group]! >= 0);
}

/** Weighted share of present among the known rows, held away from 0 and 1 by half a row on either side. */
export function presentShare(table: Table, group: number): number {
  let present = 0.5;
  let all = 1;
  for (const row of knownRows(table, group)) {
    all += table.weight[row]!;
    present += table.weight[row]! * table.truth[row * table.groups + group]!;
  }
  return present / all;
}
