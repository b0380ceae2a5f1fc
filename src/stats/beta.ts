/** The regularised incomplete beta function and its inverse: the beta and binomial distributions. */
import { awayFromZero, logGamma } from "./gamma.js";

export { logGamma } from "./gamma.js";

const MAX_STEPS = 20_000;
/** Bisection alone needs 53 halvings near 1, and more for a quantile close to 0. */
const MAX_HALVINGS = 1100;

/** ln B(a, b), the logarithm of the beta function; `a` and `b` positive. */
export function logBeta(a: number, b: number): number {
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/**
 * Regularised incomplete beta function I_x(a, b), the beta distribution's share below x.
 *
 * @param x - fraction 0..1
 * @param a - first shape, positive
 * @param b - second shape, positive
 * @returns a fraction 0..1
 * @throws {RangeError} if an argument is out of range
 * @see NIST Digital Library of Mathematical Functions 8.17.22 (continued fraction) and 8.17.4 (mirror)
 */
export function regularisedBeta(x: number, a: number, b: number): number {
  checkShapes(a, b);
  if (!(x >= 0 && x <= 1)) throw new RangeError(`x must be a fraction, got ${x}`);
  if (x === 0 || x === 1) return x;
  return x < (a + 1) / (a + b + 2) ? betaFraction(x, a, b) : 1 - betaFraction(1 - x, b, a);
}

/**
 * Inverse of {@link regularisedBeta} in x: the quantile of the beta distribution.
 *
 * @param p - fraction 0..1
 * @param a - first shape, positive
 * @param b - second shape, positive
 * @returns x with I_x(a, b) = p, to the last few bits of a double
 * @throws {RangeError} if an argument is out of range
 */
export function inverseRegularisedBeta(p: number, a: number, b: number): number {
  checkShapes(a, b);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`p must be a fraction, got ${p}`);
  if (p === 0 || p === 1) return p;
  let low = 0;
  let high = 1;
  let x = a / (a + b);
  for (let step = 0; step < MAX_HALVINGS; step += 1) {
    const error = regularisedBeta(x, a, b) - p;
    if (error === 0) return x;
    if (error < 0) low = x;
    else high = x;
    if (high - low <= Number.EPSILON * high) break;
    // Newton where it stays inside the bracket and gains on halving, bisection where it does not.
    const density = Math.exp((a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) - logBeta(a, b));
    const newton = x - error / density;
    const inside = newton > low && newton < high && step % 4 !== 3;
    const next = inside ? newton : (low + high) / 2;
    if (next === x) break;
    x = next;
  }
  return x;
}

function checkShapes(a: number, b: number): void {
  if (!(a > 0 && a < Infinity)) throw new RangeError(`first shape must be positive, got ${a}`);
  if (!(b > 0 && b < Infinity)) throw new RangeError(`second shape must be positive, got ${b}`);
}

/** DLMF 8.17.22 by the modified Lentz method; quick for x below the mean. */
function betaFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < MAX_STEPS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / awayFromZero(1 + even * d);
    c = awayFromZero(1 + even / c);
    value *= c * d;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / awayFromZero(1 + odd * d);
    c = awayFromZero(1 + odd / c);
    value *= c * d;
    if (Math.abs(c * d - 1) <= Number.EPSILON) break;
  }
  return (value * Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b))) / a;
}
