import { type PlattMap, plattNewton } from "./calibration.js";
import { checkOutcomes } from "./checkPairs.js";
import { softplus } from "./logistic.js";

const ROUNDS = 50;
/** A step this short is the last: Newton's method then errs by no more than about its square. */
const LAST_STEP = 1e-5;
/** Armijo constant of the backtracking. Common practice. */
const DECREASE = 1e-4;
const LEAST_STEP = 1e-8;
const LEAST_CURVATURE = 1e-9;

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
  // The smallest curvature keeps an unpulled fit of separable scores from dividing by nothing.
  const curvature = Math.max(pull, LEAST_CURVATURE);
  let map: PlattMap = { slope: 1, intercept: 0 };
  let loss = lossAt(map);
  for (let round = 0; round < ROUNDS; round += 1) {
    const pulls = { curvature, slope: pull * (map.slope - 1), intercept: pull * map.intercept };
    const step = plattNewton(map, scores, happened, pulls);
    // Its gain would drown in the rounding of the loss, so it is not asked for.
    if (Math.abs(step.slope) + Math.abs(step.intercept) < LAST_STEP)
      return { slope: map.slope + step.slope, intercept: map.intercept + step.intercept };
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
