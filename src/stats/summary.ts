/** A column of numbers in a few: centre, spread, trend. */

/** Makes the median absolute deviation estimate a normal standard deviation: 1 / normalQuantile(0.75). */
export const NORMAL_MAD_SCALE = 1.482602218505602;

/** Arithmetic mean. @throws {RangeError} if `values` is empty */
export function mean(values: ArrayLike<number>): number {
  checkCount(values, 1);
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return sum / values.length;
}

/**
 * Variance about the mean, by two passes.
 *
 * @param lostDegrees - 1 for the unbiased estimate (divisor n - 1), 0 for the divisor n
 * @throws {RangeError} if there are not more than `lostDegrees` values
 */
export function variance(values: ArrayLike<number>, lostDegrees: 0 | 1 = 1): number {
  checkCount(values, lostDegrees + 1);
  const centre = mean(values);
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += (values[i]! - centre) ** 2;
  return sum / (values.length - lostDegrees);
}

/** Square root of {@link variance}, in the unit of the values. */
export function standardDeviation(values: ArrayLike<number>, lostDegrees: 0 | 1 = 1): number {
  return Math.sqrt(variance(values, lostDegrees));
}

/** Middle value, or the mean of the two middle ones. @throws {RangeError} if `values` is empty */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}

/**
 * Sample quantile, type 7: linear between order statistics at rank 1 + (n - 1) p. Not for conformal cut-offs, which
 * need a whole rank.
 *
 * @param values - n >= 1 numbers, in any order
 * @param p - fraction 0..1
 * @throws {RangeError} if `values` is empty or `p` is no fraction
 * @see Hyndman and Fan, The American Statistician 50 (1996), 361-365, definition 7
 */
export function quantile(values: ArrayLike<number>, p: number): number {
  checkCount(values, 1);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p must be a fraction, got ${p}`);
  const sorted = Float64Array.from(values).sort();
  const position = (sorted.length - 1) * p;
  const below = Math.floor(position);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (position - below) * (high - low);
}

/**
 * Median of the absolute distances from the median.
 *
 * @param scale - 1 for the plain value; {@link NORMAL_MAD_SCALE} to stand for a normal standard deviation
 * @throws {RangeError} if `values` is empty
 * @see Hampel, J. Am. Stat. Assoc. 69 (1974), 383-393
 */
export function medianAbsoluteDeviation(values: ArrayLike<number>, scale = 1): number {
  const centre = median(values);
  return scale * median(Float64Array.from(values, (value) => Math.abs(value - centre)));
}

/**
 * Slope of the least-squares line of y on x.
 *
 * @param x - shape [n], n >= 2, not all equal
 * @param y - shape [n]
 * @returns change of y for each unit of x
 * @throws {RangeError} if the lengths differ, n < 2, or x does not vary
 */
export function leastSquaresSlope(x: ArrayLike<number>, y: ArrayLike<number>): number {
  checkCount(x, 2);
  if (x.length !== y.length) throw new RangeError(`x holds ${x.length} values, y ${y.length}`);
  const xCentre = mean(x);
  const yCentre = mean(y);
  let along = 0;
  let spread = 0;
  for (let i = 0; i < x.length; i += 1) {
    along += (x[i]! - xCentre) * (y[i]! - yCentre);
    spread += (x[i]! - xCentre) ** 2;
  }
  if (!(spread > 0)) throw new RangeError("a slope needs x to vary");
  return along / spread;
}

function checkCount(values: ArrayLike<number>, least: number): void {
  if (values.length < least) throw new RangeError(`needs ${least} or more values, got ${values.length}`);
}
