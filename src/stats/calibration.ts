/** From a raw score to a probability that means what it says. */
import { checkOutcomes } from "./checkPairs.js";
import { sigmoid, slopeWithinMargin, softmax, softplus, withinMargin } from "./logistic.js";

/** Limits of a fitted temperature; separable logits would otherwise ask for 0. Common practice. */
export const LEAST_TEMPERATURE = 0.01;
export const LARGEST_TEMPERATURE = 100;

/** Platt's map: probability = sigmoid(slope * score + intercept). */
export interface PlattMap {
  readonly slope: number;
  readonly intercept: number;
}

/**
 * Platt's smoothed targets, which keep the fit from promising certainty after a few examples.
 *
 * @returns (N+ + 1) / (N+ + 2) for events, 1 / (N- + 2) for the others
 * @throws {RangeError} if a count is negative or not whole
 * @see Platt, Advances in Large Margin Classifiers (1999), section 2.2
 */
export function plattTargets(
  positives: number,
  negatives: number,
): { readonly positive: number; readonly negative: number } {
  for (const count of [positives, negatives])
    if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`counts are whole, got ${count}`);
  return { positive: (positives + 1) / (positives + 2), negative: 1 / (negatives + 2) };
}

/** Ridge on the Hessian, least step and stopping gradient of Lin, Lin and Weng's algorithm 1. */
const PLATT_RIDGE = { curvature: 1e-12, slope: 0, intercept: 0 };
const PLATT_LEAST_STEP = 1e-10;
const PLATT_GRADIENT = 1e-10;
const PLATT_ROUNDS = 100;
/** Armijo constant of the backtracking, from the same algorithm. */
const PLATT_DECREASE = 1e-4;

/**
 * Fits Platt's map by Newton's method with backtracking, on Platt's smoothed targets.
 *
 * @param scores - shape [n], larger speaks for the event
 * @param happened - shape [n], 0 or 1
 * @throws {RangeError} if n = 0, the lengths differ, an outcome is neither 0 nor 1 or a score is not finite
 * @see Lin, Lin and Weng, Machine Learning 68 (2007), 267-276, algorithm 1 (with the signs of A and B turned)
 */
export function fitPlatt(scores: ArrayLike<number>, happened: ArrayLike<number>): PlattMap {
  checkOutcomes(scores, happened);
  const hits = Array.from(happened).reduce((a, b) => a + b, 0);
  const targets = plattTargets(hits, scores.length - hits);
  const target = Float64Array.from(happened, (one) => (one === 1 ? targets.positive : targets.negative));
  const score = Float64Array.from(scores);
  if (!score.every(Number.isFinite)) throw new RangeError("a score must be finite");
  let map: PlattMap = { slope: 0, intercept: Math.log((hits + 1) / (scores.length - hits + 1)) };
  let loss = plattLoss(map, score, target);
  for (let round = 0; round < PLATT_ROUNDS; round += 1) {
    const direction = plattNewton(map, score, target, PLATT_RIDGE);
    if (direction.gradientSize < PLATT_GRADIENT) break;
    let step = 1;
    for (; step >= PLATT_LEAST_STEP; step /= 2) {
      const next = {
        slope: map.slope + step * direction.slope,
        intercept: map.intercept + step * direction.intercept,
      };
      const nextLoss = plattLoss(next, score, target);
      if (nextLoss < loss + PLATT_DECREASE * step * direction.descent) {
        map = next;
        loss = nextLoss;
        break;
      }
    }
    if (step < PLATT_LEAST_STEP) break;
  }
  return map;
}

/** Probability of the event under a fitted map. */
export function applyPlatt(map: PlattMap, score: number): number {
  return sigmoid(map.slope * score + map.intercept);
}

function plattLoss(map: PlattMap, score: Float64Array, target: Float64Array): number {
  return score.reduce((sum, one, at) => {
    const logOdds = map.slope * one + map.intercept;
    return sum + softplus(logOdds) - target[at]! * logOdds;
  }, 0);
}

/** What a fit of Platt's map is held by beside its cases: curvature of either parameter, and its gradient at the map. */
export interface PlattHold {
  readonly curvature: number;
  readonly slope: number;
  readonly intercept: number;
}

/**
 * Newton's step of the log loss of Platt's map.
 *
 * @param score - shape [n]
 * @param target - shape [n], fractions 0 to 1
 * @returns the step in either parameter, its first-order change of the loss (negative), and the largest gradient
 */
export function plattNewton(
  map: PlattMap,
  score: ArrayLike<number>,
  target: ArrayLike<number>,
  hold: PlattHold,
) {
  let [h11, h12, h22, g1, g2] = [hold.curvature, 0, hold.curvature, hold.slope, hold.intercept];
  for (let i = 0; i < score.length; i += 1) {
    const p = applyPlatt(map, score[i]!);
    const weight = p * (1 - p);
    h11 += score[i]! ** 2 * weight;
    h12 += score[i]! * weight;
    h22 += weight;
    g1 += score[i]! * (p - target[i]!);
    g2 += p - target[i]!;
  }
  const determinant = h11 * h22 - h12 * h12;
  const slope = -(h22 * g1 - h12 * g2) / determinant;
  const intercept = -(h11 * g2 - h12 * g1) / determinant;
  return {
    slope,
    intercept,
    descent: g1 * slope + g2 * intercept,
    gradientSize: Math.max(Math.abs(g1), Math.abs(g2)),
  };
}

/** How the cases count for a temperature. */
export interface TemperatureOptions {
  /** How much each case counts, none below 0, shape [n]; 1 each if left out. */
  readonly weight?: ArrayLike<number> | undefined;
  /** How far each case's probability keeps from 0 and 1 after the map, 0 to 0.5, shape [n]; 0 each if left out. */
  readonly margin?: ArrayLike<number> | undefined;
  /** Weight of half the squared distance of 1 / T from 1: with few cases a free T forgets what the models know. */
  readonly pull?: number | undefined;
}

/**
 * Temperature for binary logits: the T that minimises the log loss of sigmoid(logit / T), each drawn in by its margin.
 *
 * @param logits - log-odds of the event, shape [n]
 * @param happened - shape [n], 0 or 1
 * @returns T, {@link LEAST_TEMPERATURE}..{@link LARGEST_TEMPERATURE}
 * @throws {RangeError} if n = 0, the lengths differ, an outcome is neither 0 nor 1, a margin is not 0 to 0.5 or the
 *   pull is negative
 * @see Guo, Pleiss, Sun and Weinberger, Proc. 34th ICML (2017), section 4.2
 */
export function fitTemperature(
  logits: ArrayLike<number>,
  happened: ArrayLike<number>,
  { weight, margin, pull = 0 }: TemperatureOptions = {},
): number {
  checkOutcomes(logits, happened);
  if (weight !== undefined && weight.length !== logits.length)
    throw new RangeError(`${logits.length} logits, but ${weight.length} weights`);
  if (margin !== undefined && margin.length !== logits.length)
    throw new RangeError(`${logits.length} logits, but ${margin.length} margins`);
  if (margin !== undefined)
    for (let i = 0; i < margin.length; i += 1)
      if (!(margin[i]! >= 0 && margin[i]! <= 0.5)) throw new RangeError("a margin is 0 to one half");
  if (!(pull >= 0)) throw new RangeError(`a pull is not negative, got ${pull}`);
  return temperatureWhere((sharpness) => {
    let slope = pull * (sharpness - 1);
    for (let i = 0; i < logits.length; i += 1)
      slope +=
        (weight?.[i] ?? 1) * logits[i]! * surplus(sharpness * logits[i]!, happened[i]!, margin?.[i] ?? 0);
    return slope;
  });
}

/** Slope of the log loss in the log-odds, where their probability keeps a margin; out of its reach, the error. */
function surplus(logit: number, happened: number, margin: number): number {
  const plain = sigmoid(logit);
  const slope = slopeWithinMargin(plain, margin);
  if (slope === 1) return plain - happened;
  const drawn = withinMargin(plain, margin);
  return ((drawn - happened) * slope * plain * (1 - plain)) / (drawn * (1 - drawn));
}

/**
 * Temperature for rival labels: the T that minimises the log loss of softmax(logits / T).
 *
 * @param logits - one row a case, each of shape [labels]
 * @param labels - index of the true label of each case
 * @returns T, {@link LEAST_TEMPERATURE}..{@link LARGEST_TEMPERATURE}
 * @throws {RangeError} if there are no cases, the lengths differ or a label is out of range
 */
export function fitTemperatureOfLabels(
  logits: readonly ArrayLike<number>[],
  labels: ArrayLike<number>,
): number {
  if (logits.length === 0 || logits.length !== labels.length)
    throw new RangeError(`${logits.length} rows of logits, but ${labels.length} labels`);
  logits.forEach((row, at) => {
    if (row[labels[at]!] === undefined) throw new RangeError(`no logit for label ${labels[at]}`);
  });
  return temperatureWhere((sharpness) =>
    logits.reduce((slope, row, at) => {
      const expected = softmax(row, 1 / sharpness).reduce((sum, p, label) => sum + p * row[label]!, 0);
      return slope + expected - row[labels[at]!]!;
    }, 0),
  );
}

/** Change of ln T at which it has settled: far below what a probability shows. */
const SETTLED = 1e-8;
const TEMPERATURE_ROUNDS = 100;

/** Change of ln T of the first step away from 1, where most temperatures lie near; each further step is twice as long. */
const FIRST_STEP = 0.25;

/**
 * The loss is convex in 1/T, so its slope crosses zero at most once, between two temperatures that close in on it.
 *
 * @see Dowell and Jarratt, BIT 11 (1971), 168-174 (Illinois rule: an end that stays counts for half)
 */
function temperatureWhere(lossSlope: (sharpness: number) => number): number {
  const around = bracket(lossSlope);
  if (typeof around === "number") return around;
  let { low, high, slopeLow, slopeHigh } = around;
  let [middle, moved] = [Infinity, 0];
  for (let round = 0; round < TEMPERATURE_ROUNDS; round += 1) {
    const before = middle;
    middle = (low * slopeHigh - high * slopeLow) / (slopeHigh - slopeLow);
    const slope = lossSlope(Math.exp(-middle));
    if (slope === 0 || Math.abs(middle - before) < SETTLED) break;
    if (slope > 0) {
      [low, slopeLow] = [middle, slope];
      if (moved > 0) slopeHigh /= 2;
    } else {
      [high, slopeHigh] = [middle, slope];
      if (moved < 0) slopeLow /= 2;
    }
    moved = Math.sign(slope);
  }
  return Math.exp(middle);
}

/** Two values of ln T with the zero between them, or the limit at which the slope has not turned yet. */
function bracket(lossSlope: (sharpness: number) => number) {
  const [least, largest] = [Math.log(LEAST_TEMPERATURE), Math.log(LARGEST_TEMPERATURE)];
  let [at, slope, step] = [0, lossSlope(1), FIRST_STEP];
  // A rising loss asks for a lower sharpness, so for a higher temperature.
  const up = slope > 0;
  for (;;) {
    const next = up ? Math.min(largest, at + step) : Math.max(least, at - step);
    const nextSlope = lossSlope(Math.exp(-next));
    if (up && nextSlope <= 0) return { low: at, high: next, slopeLow: slope, slopeHigh: nextSlope };
    if (!up && nextSlope >= 0) return { low: next, high: at, slopeLow: nextSlope, slopeHigh: slope };
    if (next === largest) return LARGEST_TEMPERATURE;
    if (next === least) return LEAST_TEMPERATURE;
    [at, slope, step] = [next, nextSlope, 2 * step];
  }
}

/**
 * Isotonic regression by pooling adjacent violators: the non-decreasing values nearest to y in weighted squares.
 *
 * @param y - shape [n], in the order of the score
 * @param weights - shape [n], positive; all 1 if left out
 * @returns fitted values, shape [n]
 * @throws {RangeError} if the lengths differ or a weight is not positive
 * @see Ayer and others, Ann. Math. Stat. 26 (1955), 641-647; Zadrozny and Elkan, Proc. 8th KDD (2002), 694-699
 */
export function isotonicRegression(y: ArrayLike<number>, weights?: ArrayLike<number>): Float64Array {
  if (weights !== undefined && weights.length !== y.length)
    throw new RangeError(`${y.length} values, but ${weights.length} weights`);
  const pools: { mean: number; weight: number; count: number }[] = [];
  for (let i = 0; i < y.length; i += 1) {
    const weight = weights === undefined ? 1 : weights[i]!;
    if (!(weight > 0)) throw new RangeError(`a weight must be positive, got ${weight}`);
    let pool = { mean: y[i]!, weight, count: 1 };
    for (let last = pools.at(-1); last !== undefined && last.mean >= pool.mean; last = pools.at(-1)) {
      const sum = last.weight + pool.weight;
      pool = {
        mean: (last.mean * last.weight + pool.mean * pool.weight) / sum,
        weight: sum,
        count: last.count + pool.count,
      };
      pools.pop();
    }
    pools.push(pool);
  }
  return Float64Array.from(pools.flatMap((pool) => Array<number>(pool.count).fill(pool.mean)));
}
