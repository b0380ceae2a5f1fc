import { cholesky, choleskySolve } from "../stats/linearAlgebra.js";
import type { Prepared } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";

/** Plates of prior belief that nothing has shifted: fewer fresh plates than this move the old ones by less than half. */
const PRIOR_PLATES = 1;
/** Keeps the fit of the group effects steady where groups go together; in plates. */
const RIDGE = 0.5;

/**
 * Moves the old samples to where the sniffer is now: the mean difference of each feature between fresh and old
 * samples, after taking out what their groups explain, is added to the old ones.
 *
 * @param isFresh - for each row, whether it was taken since the nose was taught
 * @returns the tables with the old rows moved; the same tables if either side is empty
 * @see Artursson and others, J. Chemometrics 14 (2000), 711-723 (drift as a common direction, corrected by references)
 */
export function alignOld(
  tables: readonly HorizonTable[],
  prepared: Prepared,
  isFresh: readonly boolean[],
): readonly HorizonTable[] {
  const old = [...isFresh.keys()].filter((row) => !isFresh[row]);
  const fresh = [...isFresh.keys()].filter((row) => isFresh[row]);
  if (old.length === 0 || fresh.length === 0) return tables;
  return tables.map((table) => {
    const shift = shiftOf(table, prepared, old, fresh);
    const values = Float64Array.from(table.values);
    for (const row of old)
      for (let i = 0; i < table.features; i += 1) values[row * table.features + i]! += shift[i]!;
    return { ...table, values };
  });
}

/** Least squares of each feature on [1, groups, fresh]; the coefficient of the last, shrunk towards none. */
function shiftOf(
  table: HorizonTable,
  prepared: Prepared,
  old: readonly number[],
  fresh: readonly number[],
): Float64Array {
  const groups = prepared.groups.length;
  const size = groups + 2;
  const products = new Float64Array(size * size);
  const targets = Array.from({ length: table.features }, () => new Float64Array(size));
  const freshRows = new Set(fresh);
  for (const row of [...old, ...fresh]) {
    const known = prepared.truth.subarray(row * groups, (row + 1) * groups);
    // An unknown truth stands half-way.
    const design = [1, ...Array.from(known, (one) => (one < 0 ? 0.5 : one)), freshRows.has(row) ? 1 : 0];
    design.forEach((left, i) => {
      design.forEach((right, j) => (products[i * size + j]! += left * right));
      targets.forEach(
        (target, feature) => (target[i]! += left * table.values[row * table.features + feature]!),
      );
    });
  }
  for (let i = 1; i <= groups; i += 1) products[i * size + i]! += RIDGE;
  products[0]! += 1e-6;
  products[size * size - 1]! += 1e-6;
  const factor = cholesky(products, size);
  const shrink = fresh.length / (fresh.length + PRIOR_PLATES);
  return Float64Array.from(targets, (target) => shrink * choleskySolve(factor, target, size)[size - 1]!);
}
