import type { LinearModel } from "../nose/models.js";
import { cholesky, choleskySolve } from "../stats/linearAlgebra.js";
import { sigmoid } from "../stats/logistic.js";
import { columnProducts, weightedProducts } from "../stats/weightedProducts.js";
import { knownRows, presentShare, type Table } from "./table.js";

/** Newton rounds at most, and the change of a weight at which it has settled. Common practice. */
const ROUNDS = 12;
const SETTLED = 1e-2;
const SETTLED_ROUGHLY = 0.03;
/** A Newton step longer than this in any weight is shortened: far from the optimum the parabola lies. */
const LONGEST_STEP = 2;

/**
 * Logistic regression with an L2 penalty, one for each group, by Newton's method.
 *
 * @param penalty - weight of half the squared weights against the summed log loss, positive; 1 is the usual default
 * @see Hastie, Tibshirani and Friedman, The Elements of Statistical Learning (2009), section 4.4
 */
export function fitLogistic(table: Table, penalty = 1): LinearModel {
  return fitFrom(table, casesOf(table), penalty, undefined, SETTLED);
}

/**
 * The same for several penalties, a little less exact: each fit starts from the one before, which saves most rounds.
 *
 * @param penalties - positive; the heaviest first is quickest
 * @returns one model a penalty, in their order
 */
export function fitLogisticPath(table: Table, penalties: readonly number[]): LinearModel[] {
  const models: LinearModel[] = [];
  const cases = casesOf(table);
  for (const penalty of penalties)
    models.push(fitFrom(table, cases, penalty, models.at(-1), SETTLED_ROUGHLY));
  return models;
}

function fitFrom(
  table: Table,
  cases: readonly KnownCases[],
  penalty: number,
  before: LinearModel | undefined,
  settled: number,
): LinearModel {
  const weights = new Float32Array(table.groups * table.features);
  const intercepts = new Float32Array(table.groups);
  for (let group = 0; group < table.groups; group += 1) {
    const known = cases[group]!;
    const present = known.truth.reduce((sum, truth) => sum + truth, 0);
    const share = presentShare(table, group);
    const start = new Float64Array(table.features + 1);
    start[table.features] = Math.log(share / (1 - share));
    const warm = Float64Array.from(start);
    if (before !== undefined) {
      warm.set(before.weights.subarray(group * table.features, (group + 1) * table.features));
      warm[table.features] = before.intercepts[group]!;
    }
    const fitted =
      present === 0 || present === known.truth.length ? start : newton(known, warm, penalty, settled);
    weights.set(fitted.subarray(0, table.features), group * table.features);
    intercepts[group] = fitted[table.features]!;
  }
  return { weights, intercepts };
}

function newton(known: KnownCases, start: Float64Array, penalty: number, settled: number): Float64Array {
  const size = start.length;
  const beta = Float64Array.from(start);
  for (let round = 0; round < ROUNDS; round += 1) {
    const { gradient, hessian } = slopeAndCurve(known, beta, penalty);
    const step = choleskySolve(cholesky(hessian, size), gradient, size);
    const longest = step.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    const scale = longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
    step.forEach((value, i) => (beta[i]! -= scale * value));
    if (longest < settled) break;
  }
  return beta;
}

/** What one group's regression is fitted on. */
interface KnownCases {
  /** Features and a last column of ones, column by column, shape [features + 1, rows]. */
  readonly columns: Float64Array;
  readonly truth: Float64Array;
  readonly weight: Float64Array;
}

/** What each group is fitted on; groups that are known of the same rows share the columns. */
function casesOf(table: Table): KnownCases[] {
  const shared = new Map<string, Float64Array>();
  return Array.from({ length: table.groups }, (_, group) => {
    const rows = knownRows(table, group);
    const key = rows.join();
    const columns = shared.get(key) ?? columnsOf(table, rows);
    shared.set(key, columns);
    const truth = Float64Array.from(rows, (row) => table.truth[row * table.groups + group]!);
    return { columns, truth, weight: Float64Array.from(rows, (row) => table.weight[row]!) };
  });
}

function columnsOf({ x, features }: Table, rows: readonly number[]): Float64Array {
  const columns = new Float64Array((features + 1) * rows.length).fill(1);
  for (let i = 0; i < features; i += 1)
    for (let at = 0; at < rows.length; at += 1) columns[i * rows.length + at] = x[rows[at]! * features + i]!;
  return columns;
}

function slopeAndCurve({ columns, truth, weight }: KnownCases, beta: Float64Array, penalty: number) {
  const rows = truth.length;
  const size = beta.length;
  const logits = new Float64Array(rows);
  for (let i = 0; i < size; i += 1)
    for (let at = 0; at < rows; at += 1) logits[at]! += beta[i]! * columns[i * rows + at]!;
  const pull = new Float64Array(rows);
  const curve = new Float64Array(rows);
  for (let at = 0; at < rows; at += 1) {
    const p = sigmoid(logits[at]!);
    pull[at] = weight[at]! * (p - truth[at]!);
    curve[at] = weight[at]! * Math.max(1e-9, p * (1 - p));
  }
  const hessian = weightedProducts(columns, size, curve);
  const gradient = new Float64Array(size);
  columnProducts(columns, size, pull, gradient);
  for (let i = 0; i < size; i += 1) {
    // The intercept is hardly pulled.
    const pulled = i < size - 1 ? penalty : 0;
    gradient[i]! += pulled * beta[i]!;
    hessian[i * size + i]! += i < size - 1 ? penalty : 1e-9;
  }
  return { gradient, hessian };
}
