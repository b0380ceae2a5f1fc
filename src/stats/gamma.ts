/** The gamma function's logarithm and the regularised incomplete gamma functions. */

/** Coefficients of the Stirling series, B_2k / (2k (2k-1)). Source: Abramowitz and Stegun 6.1.41. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];
/** From here on seven terms of the series leave less than 1e-16. */
const STIRLING_FROM = 10;
const MAX_STEPS = 20_000;
const TINY = 1e-300;

/**
 * Natural logarithm of the gamma function.
 *
 * @param x - positive and finite
 * @returns ln Gamma(x), absolute error about 1e-15 times the size of the result or of 1
 * @throws {RangeError} if `x` is not positive and finite
 * @see Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 6.1.15 and 6.1.41
 */
export function logGamma(x: number): number {
  if (!(x > 0 && x < Infinity)) throw new RangeError(`logGamma needs a positive number, got ${x}`);
  let product = 1;
  let shifted = x;
  for (; shifted < STIRLING_FROM; shifted += 1) product *= shifted;
  const inverseSquare = 1 / (shifted * shifted);
  const series = STIRLING.reduceRight((sum, term) => sum * inverseSquare + term, 0) / shifted;
  return (
    (shifted - 0.5) * Math.log(shifted) - shifted + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product)
  );
}

/**
 * Regularised lower incomplete gamma function P(a, x), the gamma distribution's share below x.
 *
 * @param a - shape, positive
 * @param x - zero or more; Infinity gives 1
 * @throws {RangeError} if an argument is out of range
 * @see NIST Digital Library of Mathematical Functions 8.2.4
 */
export function regularisedGammaLower(a: number, x: number): number {
  checkGammaInput(a, x);
  return x < a + 1 ? gammaSeries(a, x) : 1 - gammaFraction(a, x);
}

/** Regularised upper incomplete gamma function Q(a, x) = 1 - P(a, x), exact far in the tail. */
export function regularisedGammaUpper(a: number, x: number): number {
  checkGammaInput(a, x);
  return x < a + 1 ? 1 - gammaSeries(a, x) : gammaFraction(a, x);
}

function checkGammaInput(a: number, x: number): void {
  if (!(a > 0 && a < Infinity)) throw new RangeError(`shape must be positive, got ${a}`);
  if (!(x >= 0)) throw new RangeError(`x must be zero or more, got ${x}`);
}

/** DLMF 8.11.4: the power series, quick for x < a + 1. */
function gammaSeries(a: number, x: number): number {
  if (x === 0) return 0;
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MAX_STEPS && term > sum * Number.EPSILON; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * Math.exp(a * Math.log(x) - x - logGamma(a));
}

/** DLMF 8.9.2 in its even form, by the modified Lentz method; quick for x > a + 1. */
function gammaFraction(a: number, x: number): number {
  if (x === Infinity) return 0;
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < MAX_STEPS; n += 1) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / awayFromZero(b + numerator * d);
    c = awayFromZero(b + numerator / c);
    value *= c * d;
    if (Math.abs(c * d - 1) <= Number.EPSILON) break;
  }
  return value * Math.exp(a * Math.log(x) - x - logGamma(a));
}

/** Keeps a continued fraction's denominators from vanishing. @see Lentz, Applied Optics 15 (1976), 668-671 */
export function awayFromZero(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}
