import { inverseRegularisedBeta } from "./beta.js";
import type { Interval } from "./interval.js";
import { mean, standardDeviation } from "./summary.js";

/**
 * Quantile of Student's t distribution.
 *
 * @param p - fraction, 0 < p < 1
 * @param degrees - degrees of freedom, positive
 * @throws {RangeError} if an argument is out of range
 * @see Abramowitz and Stegun 26.7.1, through the incomplete beta function
 */
export function studentQuantile(p: number, degrees: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must lie between 0 and 1, got ${p}`);
  if (!(degrees > 0)) throw new RangeError(`degrees of freedom must be positive, got ${degrees}`);
  if (p === 0.5) return 0;
  const x = inverseRegularisedBeta(2 * Math.min(p, 1 - p), degrees / 2, 0.5);
  return Math.sign(p - 0.5) * Math.sqrt((degrees * (1 - x)) / x);
}

/**
 * Student's two-sided interval for a mean.
 *
 * @param values - shape [n], n >= 2
 * @param confidence - fraction, 0.95 if left out
 * @throws {RangeError} with fewer than two values
 */
export function meanInterval(values: readonly number[], confidence = 0.95): Interval {
  if (values.length < 2) throw new RangeError("an interval needs two values");
  const middle = mean(values);
  const half =
    (studentQuantile((1 + confidence) / 2, values.length - 1) * standardDeviation(values)) /
    Math.sqrt(values.length);
  return { low: middle - half, high: middle + half };
}
