import type { LinearModel } from "../nose/models.js";
import { ledoitWolf } from "../stats/ledoitWolf.js";
import { cholesky, choleskySolve, covariance } from "../stats/linearAlgebra.js";
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

function discriminantLine(table: Table, group: number): DiscriminantLine | null {
  const rows = knownRows(table, group);
  const lines =
    rows.length < 4
      ? null
      : discriminantLines(table, rows, (row) => table.truth[row * table.groups + group]!, 2, "ledoitWolf");
  const [absent, present] = lines ?? [];
  if (absent === undefined || present === undefined) return null;
  return {
    weights: present.weights.map((weight, i) => weight - absent.weights[i]!),
    offset: present.offset - absent.offset,
  };
}

/** A linear score: weights times features plus offset, without the log of the class's prior share. */
export interface DiscriminantLine {
  readonly weights: Float64Array;
  readonly offset: number;
}

/**
 * Linear discriminant scores of any number of classes with one covariance.
 *
 * @param classOf - class of a row, whole, 0 to `classes` - 1
 * @param shrinkage - "none" is Fisher's own, and needs more rows than features
 * @returns one line a class, or null if a class has no row or nothing varies
 * @see Fisher, Annals of Eugenics 7 (1936), 179-188
 */
export function discriminantLines(
  table: Table,
  rows: readonly number[],
  classOf: (row: number) => number,
  classes: number,
  shrinkage: "ledoitWolf" | "none",
): DiscriminantLine[] | null {
  const { features } = table;
  const centres: Float64Array[] = [];
  for (let one = 0; one < classes; one += 1) {
    const members = rows.filter((row) => classOf(row) === one);
    if (members.length === 0) return null;
    centres.push(meanOf(table, members));
  }
  const centred = new Float64Array(rows.length * features);
  rows.forEach((row, at) => {
    const centre = centres[classOf(row)]!;
    rowOf(table, row).forEach((value, i) => (centred[at * features + i] = value - centre[i]!));
  });
  const spread =
    shrinkage === "ledoitWolf"
      ? ridged(ledoitWolf(centred, rows.length, features).covariance, features)
      : covariance(centred, rows.length, features, 0);
  if (spread === null) return null;
  const factor = cholesky(spread, features);
  return centres.map((centre) => {
    const weights = choleskySolve(factor, centre, features);
    return { weights, offset: -weights.reduce((sum, weight, i) => sum + (weight * centre[i]!) / 2, 0) };
  });
}

function ridged(matrix: Float64Array, features: number): Float64Array | null {
  let trace = 0;
  for (let i = 0; i < features; i += 1) trace += matrix[i * features + i]!;
  if (!(trace > 0)) return null;
  return matrix.map((value, at) => value + (at % (features + 1) === 0 ? (RIDGE * trace) / features : 0));
}

function meanOf(table: Table, rows: readonly number[]): Float64Array {
  const sum = new Float64Array(table.features);
  let all = 0;
  for (const row of rows) {
    const weight = table.weight[row]!;
    all += weight;
    rowOf(table, row).forEach((value, i) => (sum[i]! += weight * value));
  }
  return sum.map((value) => value / all);
}
