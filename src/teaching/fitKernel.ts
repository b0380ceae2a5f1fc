import { type RandomSource, shuffled } from "../kernel/random.js";
import { bellHeight, MIDDLE_STEPS } from "../nose/kernelLogits.js";
import type { KernelModel } from "../nose/models.js";
import { cholesky, choleskySolve } from "../stats/linearAlgebra.js";
import { columnProducts, listProducts, weightedProducts } from "../stats/weightedProducts.js";
import { countingRows, rowOf, type Table } from "./table.js";

export interface KernelOptions {
  /** Falls of a bell, positive; see KernelModel. */
  readonly widths: readonly number[];
  /** Pull of the weights to zero, in rows, positive: the more, the smoother. */
  readonly ridge: number;
  /** Bells at most, whole, >= 1: so teaching time grows with the sniffs and not with their cube. */
  readonly bells: number;
}

/**
 * The kernel of the nose: wide, middling and narrow bells in one, as food never taught wants smooth and known food sharp.
 * No width is picked from the samples, because a choice among few plates is partly luck. As many bells again gain
 * nothing that shows on the open data.
 */
export const KERNEL: KernelOptions = { widths: [0.03, 0.3, 3], ridge: 0.02, bells: 180 };

/** Bells of an earlier horizon, by which most plates are *uncertain* yet: fewer keep the teaching short. */
export const EARLY_BELLS = 120;

/** Added to the diagonal of the bells' own heights, so that two like sniffs do not stop the inversion. */
const JITTER = 1e-3;
/** Size of the constant feature: its weight, the intercept, is hardly pulled. */
const CONSTANT = 3;
/** Log-odds for a regression value of 1, "present without doubt"; mixing and calibration set the final scale. */
const SURE_LOGIT = 4;

/**
 * Ridge regression of the truths (1 and -1) on bells around taught sniffs, one for each group.
 *
 * @see Suykens and Vandewalle, Neural Processing Letters 9 (1999), 293-300 (least squares support vector machine);
 *   Williams and Seeger, NIPS 13 (2001), 682-688 (Nystroem method, for fewer bells than sniffs);
 *   Goenen and Alpaydin, J. Machine Learning Research 12 (2011), 2211-2268 (the mean of several kernels is one)
 */
export function fitKernel(table: Table, options: KernelOptions, random: RandomSource): KernelModel {
  const rows = countingRows(table);
  const centres = rows.length <= options.bells ? rows : shuffled(rows, random).slice(0, options.bells);
  const middles = new Int16Array(centres.length * table.features);
  centres.forEach((row, bell) => middles.set(middleOf(rowOf(table, row)), bell * table.features));
  // The bells stand where the nose will keep them, not where the sniffs were.
  const places = Float64Array.from(middles, (step) => step / MIDDLE_STEPS);
  const points = new Float64Array(rows.length * table.features);
  rows.forEach((row, at) => points.set(rowOf(table, row), at * table.features));
  const heights = new Float64Array((centres.length + 1) * rows.length).fill(CONSTANT);
  heights.set(heightsOf(meanSquares(places, points, table.features), options.widths));
  const bells = heightsOf(meanSquares(places, places, table.features), options.widths);
  return { widths: options.widths, middles, ...regression(table, rows, heights, bells, options.ridge) };
}

function middleOf(x: Float64Array): Int16Array {
  const most = 0x7fff;
  return Int16Array.from(x, (value) => Math.max(-most, Math.min(most, Math.round(MIDDLE_STEPS * value))));
}

/** Turns mean squared differences into heights of bells, in place. */
function heightsOf(squares: Float64Array, widths: readonly number[]): Float64Array {
  for (let at = 0; at < squares.length; at += 1) squares[at] = bellHeight(widths, squares[at]!);
  return squares;
}

/** Mean squared difference of each pair, shape [ones, others]; places of shape [.., features]. */
function meanSquares(ones: Float64Array, others: Float64Array, features: number): Float64Array {
  const width = others.length / features;
  const squares = listProducts(others, ones, features);
  const lengths = squaredLengths(others, features);
  squaredLengths(ones, features).forEach((length, one) => {
    for (let other = 0, at = one * width; other < width; other += 1, at += 1)
      // Rounding must not leave less than nothing between two places that are the same.
      squares[at] = Math.max(0, length + lengths[other]! - 2 * squares[at]!) / features;
  });
  return squares;
}

/** Sum of the squares of each place, shape [places]. */
function squaredLengths(places: Float64Array, features: number): Float64Array {
  const lengths = new Float64Array(places.length / features);
  places.forEach((value, at) => (lengths[Math.floor(at / features)]! += value * value));
  return lengths;
}

/**
 * Normal equations of the regression: (H W H' + ridge (B + jitter)) a = H W y, where H holds the heights at the sniffs and
 * a constant row, shape [bells + 1, rows], B the bells' heights at each other. Groups with the same known rows share one
 * factorisation.
 */
function regression(
  table: Table,
  rows: readonly number[],
  heights: Float64Array,
  bells: Float64Array,
  ridge: number,
): Pick<KernelModel, "weights" | "intercepts"> {
  const { groups } = table;
  const size = heights.length / rows.length;
  const count = size - 1;
  const answer = { weights: new Float32Array(count * groups), intercepts: new Float32Array(groups) };
  const factors = new Map<string, Float64Array>();
  for (let group = 0; group < groups; group += 1) {
    const truth = rows.map((row) => table.truth[row * groups + group]!);
    const weight = rowWeights(table, rows, truth);
    const key = truth.map((one) => (one < 0 ? "?" : ".")).join("");
    const factor =
      factors.get(key) ?? cholesky(pulled(weightedProducts(heights, size, weight), bells, size, ridge), size);
    factors.set(key, factor);
    const target = weight.map((one, at) => (truth[at] === 1 ? one : -one));
    const sums = new Float64Array(size);
    columnProducts(heights, size, target, sums);
    const solved = choleskySolve(factor, sums, size);
    for (let bell = 0; bell < count; bell += 1)
      answer.weights[bell * groups + group] = SURE_LOGIT * solved[bell]!;
    answer.intercepts[group] = SURE_LOGIT * CONSTANT * solved[count]!;
  }
  return answer;
}

/** A plate counts once, as in the other models; on the scale of rows, so that the ridge means the same. */
function rowWeights(table: Table, rows: readonly number[], truth: readonly number[]): Float64Array {
  const weight = Float64Array.from(rows, (row, at) => (truth[at]! >= 0 ? table.weight[row]! : 0));
  const sum = weight.reduce((all, one) => all + one, 0);
  const known = truth.filter((one) => one >= 0).length;
  return weight.map((one) => (sum > 0 ? (one * known) / sum : 0));
}

function pulled(products: Float64Array, bells: Float64Array, size: number, ridge: number): Float64Array {
  const count = size - 1;
  const matrix = Float64Array.from(products);
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j <= i; j += 1) matrix[i * size + j]! += ridge * bells[i * count + j]!;
    matrix[i * size + i]! += ridge * JITTER;
  }
  matrix[count * size + count]! += ridge;
  return matrix;
}
