/** The standard normal distribution. */
import { regularisedGammaLower, regularisedGammaUpper } from "./gamma.js";

/** Density of the standard normal distribution at `z`. */
export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * Share of the standard normal distribution below `z`.
 *
 * @returns a fraction 0..1, accurate in relative terms in the lower tail
 * @throws {RangeError} if `z` is not a number
 * @see Abramowitz and Stegun 6.5.16 with 7.1.1: erf(t) = P(1/2, t^2)
 */
export function normalCdf(z: number): number {
  if (Number.isNaN(z)) throw new RangeError("z must be a number");
  if (z < 0) return regularisedGammaUpper(0.5, (z * z) / 2) / 2;
  return 0.5 + regularisedGammaLower(0.5, (z * z) / 2) / 2;
}

/**
 * Quantile of the standard normal distribution.
 *
 * @param p - fraction 0..1; 0 gives -Infinity and 1 gives Infinity
 * @throws {RangeError} if `p` is not a fraction
 * @see Abramowitz and Stegun 26.2.23 for the start, then Halley steps on {@link normalCdf}
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p must be a fraction, got ${p}`);
  if (p === 0) return -Infinity;
  if (p > 0.5) return -normalQuantile(1 - p);
  let z = roughLowerQuantile(p);
  for (let step = 0; step < 3; step += 1) {
    const newton = (normalCdf(z) - p) / normalDensity(z);
    z -= newton / (1 + (z * newton) / 2);
  }
  return z;
}

/** Abramowitz and Stegun 26.2.23, absolute error below 4.5e-4, for p up to one half. */
function roughLowerQuantile(p: number): number {
  const t = Math.sqrt(-2 * Math.log(p));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return above / below - t;
}
