import type { PlattMap } from "./calibration.js";
import { checkOutcomes } from "./checkPairs.js";
import { sigmoid, softplus } from "./logistic.js";

const ROUNDS = 50;
const SETTLED = 1e-9;
/** Armijo constant of the backtracking. Common practice. */
const DECREASE = 1e-4;
const LEAST_STEP = 1e-8;

/**
 * Platt's map pulled towards doing nothing (slope 1, intercept 0), for few cases: the maximum a posteriori fit under a
 * normal prior around that map.
 *
 * @param scores - log-odds of the event, shape [n]
 * @param happened - shape [n], 0 or 1
 * @param pull - weight of half the squared distance from slope 1 and intercept 0, positive; 0 is no pull
 * @throws {RangeError} if n = 0, the lengths differ, an outcome is neither 0 nor 1 or the pull is negative
 * @see Platt, Advances in Large Margin Classifiers (1999); Gelman and others, Annals of Applied Statistics 2 (2008),
 *   1360-1383 (weak priors keep logistic fits of few cases finite)
 */
export function fitPulledPlatt(
  scores: ArrayLike<number>,
  happened: ArrayLike<number>,
  pull: number,
): PlattMap {
  checkOutcomes(scores, happened);
  if (!(pull >= 0)) throw new RangeError(`a pull is not negative, got ${pull}`);
  const lossAt = ({ slope, intercept }: PlattMap) => {
    let loss = (pull / 2) * ((slope - 1) ** 2 + intercept ** 2);
    for (let i = 0; i < scores.length; i += 1) {
      const logit = slope * scores[i]! + intercept;
      loss += softplus(logit) - happened[i]! * logit;
    }
    return loss;
  };
  let map: PlattMap = { slope: 1, intercept: 0 };
  let loss = lossAt(map);
  for (let round = 0; round < ROUNDS; round += 1) {
    const step = newtonStep(map, scores, happened, pull);
    if (Math.abs(step.slope) + Math.abs(step.intercept) < SETTLED) break;
    let share = 1;
    for (; share >= LEAST_STEP; share /= 2) {
      const next = {
        slope: map.slope + share * step.slope,
        intercept: map.intercept + share * step.intercept,
      };
      const nextLoss = lossAt(next);
      if (nextLoss > loss + DECREASE * share * step.descent) continue;
      map = next;
      loss = nextLoss;
      break;
    }
    if (share < LEAST_STEP) break;
  }
  return map;
}

function newtonStep(map: PlattMap, scores: ArrayLike<number>, happened: ArrayLike<number>, pull: number) {
  // The smallest curvature keeps an unpulled fit of separable scores from dividing by nothing.
  const curve = Math.max(pull, 1e-9);
  let [h11, h12, h22] = [curve, 0, curve];
  let [g1, g2] = [pull * (map.slope - 1), pull * map.intercept];
  for (let i = 0; i < scores.length; i += 1) {
    const p = sigmoid(map.slope * scores[i]! + map.intercept);
    const weight = p * (1 - p);
    h11 += scores[i]! ** 2 * weight;
    h12 += scores[i]! * weight;
    h22 += weight;
    g1 += scores[i]! * (p - happened[i]!);
    g2 += p - happened[i]!;
  }
  const determinant = h11 * h22 - h12 * h12;
  const slope = -(h22 * g1 - h12 * g2) / determinant;
  const intercept = -(h11 * g2 - h12 * g1) / determinant;
  return { slope, intercept, descent: g1 * slope + g2 * intercept };
}
