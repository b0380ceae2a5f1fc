import { type RandomSource, shuffled } from "../kernel/random.js";
import { bellHeights, MIDDLE_STEPS } from "../nose/kernelLogits.js";
import type { KernelModel } from "../nose/models.js";
import { cholesky, choleskySolve, forwardSolve } from "../stats/linearAlgebra.js";
import { rowOf, type Table } from "./table.js";

export interface KernelShape {
  /** Fall of a bell, positive; see KernelModel. */
  readonly width: number;
  /** Pull of the weights to zero, in rows, positive: the more, the smoother. */
  readonly ridge: number;
}

export interface KernelOptions extends KernelShape {
  /** Bells at most, whole, >= 1: so teaching time grows with the sniffs and not with their cube. */
  readonly bells: number;
}

/** Bells of the nose: as many again gain nothing that shows on the open data. */
export const BELLS = 240;
/** Added to the diagonal of the bells' own heights, so that two like sniffs do not stop the inversion. */
const JITTER = 1e-3;
/** Size of the constant feature: its weight, the intercept, is hardly pulled. */
const CONSTANT = 3;
/** Log-odds for a regression value of 1, "present without doubt"; mixing and calibration set the final scale. */
const SURE_LOGIT = 4;

/**
 * Ridge regression of the truths (1 and -1) on Gaussian bells around taught sniffs, one for each group.
 *
 * @see Suykens and Vandewalle, Neural Processing Letters 9 (1999), 293-300 (least squares support vector machine);
 *   Williams and Seeger, NIPS 13 (2001), 682-688 (Nystroem method, for fewer bells than sniffs)
 */
export function fitKernel(table: Table, options: KernelOptions, random: RandomSource): KernelModel {
  const { features, groups } = table;
  const rows: number[] = [];
  for (let row = 0; row < table.rows; row += 1) if (table.weight[row]! > 0) rows.push(row);
  const centres = rows.length <= options.bells ? rows : shuffled(rows, random).slice(0, options.bells);
  const middles = new Int16Array(centres.length * features);
  centres.forEach((row, bell) => middles.set(middleOf(rowOf(table, row)), bell * features));
  const bells = { width: options.width, middles };
  const factor = cholesky(ownHeights(bells, features), centres.length);
  const regression = regressionOf(table, rows, bells, factor, options.ridge);
  const weights = new Float32Array(centres.length * groups);
  const intercepts = new Float32Array(groups);
  for (let group = 0; group < groups; group += 1) {
    const { slopes, intercept } = regression(group);
    backwardSolve(factor, slopes).forEach((weight, bell) => (weights[bell * groups + group] = weight));
    intercepts[group] = intercept;
  }
  return { ...bells, weights, intercepts };
}

type Bells = Pick<KernelModel, "width" | "middles">;

function middleOf(x: Float64Array): Int16Array {
  const most = 0x7fff;
  return Int16Array.from(x, (value) => Math.max(-most, Math.min(most, Math.round(MIDDLE_STEPS * value))));
}

/** Heights of the bells at each other's middles, shape [bells, bells]. */
function ownHeights(bells: Bells, features: number): Float64Array {
  const count = bells.middles.length / features;
  const heights = new Float64Array(count * count);
  for (let bell = 0; bell < count; bell += 1) {
    const middle = bells.middles.subarray(bell * features, (bell + 1) * features);
    heights.set(
      bellHeights(
        bells,
        Float64Array.from(middle, (value) => value / MIDDLE_STEPS),
      ),
      bell * count,
    );
    heights[bell * count + bell]! += JITTER;
  }
  return heights;
}

/** Solves the regression of a group; groups with the same known rows share one factorisation. */
function regressionOf(
  table: Table,
  rows: readonly number[],
  bells: Bells,
  factor: Float64Array,
  ridge: number,
) {
  const count = bells.middles.length / table.features;
  const size = count + 1;
  const inputs = rows.map((row) => {
    const input = new Float64Array(size);
    input.set(forwardSolve(factor, bellHeights(bells, rowOf(table, row)), count));
    input[count] = CONSTANT;
    return input;
  });
  const factors = new Map<string, Float64Array>();
  return (group: number): { slopes: Float64Array; intercept: number } => {
    const truth = rows.map((row) => table.truth[row * table.groups + group]!);
    const known = truth.flatMap((one, at) => (one >= 0 ? [at] : []));
    const key = known.length === rows.length ? "" : known.join();
    const sum = known.reduce((all, at) => all + table.weight[rows[at]!]!, 0);
    // A plate counts once, as in the other models; the scale is that of rows, so that the ridge means the same.
    const weightOf = (at: number) => (table.weight[rows[at]!]! * known.length) / sum;
    const solver = factors.get(key) ?? cholesky(products(inputs, known, weightOf, ridge), size);
    factors.set(key, solver);
    const target = new Float64Array(size);
    for (const at of known) {
      const pull = weightOf(at) * (truth[at] === 1 ? 1 : -1);
      for (let i = 0; i < size; i += 1) target[i]! += pull * inputs[at]![i]!;
    }
    const solved = choleskySolve(solver, target, size).map((value) => SURE_LOGIT * value);
    return { slopes: solved.slice(0, count), intercept: CONSTANT * solved[count]! };
  };
}

/** Weighted products of the inputs with each other plus the ridge, lower triangle, shape [size, size]. */
function products(
  inputs: readonly Float64Array[],
  known: readonly number[],
  weightOf: (at: number) => number,
  ridge: number,
): Float64Array {
  const size = inputs[0]?.length ?? 0;
  const matrix = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) matrix[i * size + i] = ridge;
  for (const at of known) {
    const input = inputs[at]!;
    const weight = weightOf(at);
    for (let i = 0; i < size; i += 1) {
      const scaled = weight * input[i]!;
      for (let j = 0; j <= i; j += 1) matrix[i * size + j]! += scaled * input[j]!;
    }
  }
  return matrix;
}

/** Solves L' x = b for a lower triangular L, shape [size, size]. */
function backwardSolve(factor: Float64Array, vector: Float64Array): Float64Array {
  const size = vector.length;
  const solution = Float64Array.from(vector);
  for (let i = size - 1; i >= 0; i -= 1) {
    let rest = solution[i]!;
    for (let k = i + 1; k < size; k += 1) rest -= factor[k * size + i]! * solution[k]!;
    solution[i] = rest / factor[i * size + i]!;
  }
  return solution;
}
