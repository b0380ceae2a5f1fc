/** The chi-squared distribution. */
import { regularisedGammaLower, regularisedGammaUpper } from "./gamma.js";

/**
 * Share of the chi-squared distribution below `x`.
 *
 * @param x - zero or more
 * @param degrees - degrees of freedom, positive
 * @throws {RangeError} if an argument is out of range
 * @see Abramowitz and Stegun 26.4.19
 */
export function chiSquaredCdf(x: number, degrees: number): number {
  return regularisedGammaLower(degrees / 2, x / 2);
}

/** Share of the chi-squared distribution above `x`: the p-value of a chi-squared statistic. */
export function chiSquaredUpperTail(x: number, degrees: number): number {
  return regularisedGammaUpper(degrees / 2, x / 2);
}

/**
 * Quantile of the chi-squared distribution.
 *
 * @param p - fraction, 0 <= p < 1
 * @param degrees - degrees of freedom, positive
 * @throws {RangeError} if an argument is out of range
 */
export function chiSquaredQuantile(p: number, degrees: number): number {
  if (!(p >= 0 && p < 1)) throw new RangeError(`p must be a fraction below 1, got ${p}`);
  if (p === 0) return 0;
  let low = 0;
  let high = Math.max(1, degrees);
  while (chiSquaredCdf(high, degrees) < p) {
    low = high;
    high *= 2;
  }
  // Bisection down to neighbouring doubles: slow, but it cannot miss.
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high || high - low <= Number.EPSILON * high) return middle;
    if (chiSquaredCdf(middle, degrees) < p) low = middle;
    else high = middle;
  }
}
