import type { LinearModel } from "../nose/models.js";
import { ledoitWolf } from "../stats/ledoitWolf.js";
import { cholesky, choleskySolve } from "../stats/linearAlgebra.js";
import { knownRows, presentShare, rowOf, type Table } from "./table.js";

/** Added to the diagonal, so that constant channels do not stop the inversion; in units of the mean variance. */
const RIDGE = 1e-4;

/**
 * Linear discriminant with shrunk covariance, one for each group against its absence.
 *
 * @see Ledoit and Wolf, J. Multivariate Analysis 88 (2004), 365-411; Friedman, JASA 84 (1989), 165-175
 */
export function fitDiscriminant(table: Table): LinearModel {
  const weights = new Float32Array(table.groups * table.features);
  const intercepts = new Float32Array(table.groups);
  for (let group = 0; group < table.groups; group += 1) {
    const share = presentShare(table, group);
    const line = discriminantLine(table, group);
    const priorLogit = Math.log(share / (1 - share));
    if (line !== null) weights.set(line.weights, group * table.features);
    intercepts[group] = priorLogit + (line?.offset ?? 0);
  }
  return { weights, intercepts };
}

function discriminantLine(table: Table, group: number): { weights: Float64Array; offset: number } | null {
  const rows = knownRows(table, group);
  const isPresent = (row: number) => table.truth[row * table.groups + group] === 1;
  const centres = [false, true].map((present) =>
    meanOf(
      table,
      rows.filter((row) => isPresent(row) === present),
    ),
  );
  const [absent, present] = centres;
  if (absent === null || absent === undefined || present === null || present === undefined || rows.length < 4)
    return null;
  const { features } = table;
  const centred = new Float64Array(rows.length * features);
  rows.forEach((row, at) => {
    const centre = isPresent(row) ? present : absent;
    rowOf(table, row).forEach((value, i) => (centred[at * features + i] = value - centre[i]!));
  });
  const shrunk = ledoitWolf(centred, rows.length, features).covariance;
  let trace = 0;
  for (let i = 0; i < features; i += 1) trace += shrunk[i * features + i]!;
  if (!(trace > 0)) return null;
  for (let i = 0; i < features; i += 1) shrunk[i * features + i]! += (RIDGE * trace) / features;
  const gap = present.map((value, i) => value - absent[i]!);
  const weights = choleskySolve(cholesky(shrunk, features), gap, features);
  const offset = -weights.reduce((sum, weight, i) => sum + (weight * (present[i]! + absent[i]!)) / 2, 0);
  return { weights, offset };
}

function meanOf(table: Table, rows: readonly number[]): Float64Array | null {
  if (rows.length === 0) return null;
  const sum = new Float64Array(table.features);
  let all = 0;
  for (const row of rows) {
    const weight = table.weight[row]!;
    all += weight;
    rowOf(table, row).forEach((value, i) => (sum[i]! += weight * value));
  }
  return sum.map((value) => value / all);
}
