/** How little can be detected: decision and detection limits over a blank, and detection against dose. */
import { normalCdf, normalDensity, normalQuantile } from "./normal.js";
import { mean, standardDeviation } from "./summary.js";

/** Signals above the blank's mean, in the unit of the blank's standard deviation. */
export interface CurrieLimits {
  /** L_C: a net signal above this is called detected. */
  readonly critical: number;
  /** L_D: the true net signal that will be called detected with chance 1 - miss. */
  readonly detection: number;
}

/**
 * Currie's limits for normal noise of constant size.
 *
 * @param blankSd - standard deviation of one blank reading, positive
 * @param blank - `paired`: one blank beside each reading, so the noise counts twice; `wellKnown`: its mean is known
 * @param falseAlarm - chance of calling a blank detected, strictly between 0 and 1
 * @param miss - chance of missing a signal at the detection limit, strictly between 0 and 1
 * @throws {RangeError} if an argument is out of range
 * @see Currie, Analytical Chemistry 40 (1968), 586-593; ISO 11843-2
 */
export function currieLimits(
  blankSd: number,
  blank: "paired" | "wellKnown",
  falseAlarm = 0.05,
  miss = 0.05,
): CurrieLimits {
  if (!(blankSd > 0)) throw new RangeError(`the blank's standard deviation must be positive, got ${blankSd}`);
  for (const chance of [falseAlarm, miss])
    if (!(chance > 0 && chance < 1)) throw new RangeError(`a chance lies between 0 and 1, got ${chance}`);
  const netSd = blank === "paired" ? blankSd * Math.SQRT2 : blankSd;
  const critical = normalQuantile(1 - falseAlarm) * netSd;
  return { critical, detection: critical + normalQuantile(1 - miss) * netSd };
}

/** Common practice: three standard deviations over the blank; a normal blank exceeds it with chance 0.00135. */
export const BLANK_SIGMAS = 3;

/**
 * The three-sigma rule on blank readings.
 *
 * @param blank - shape [n], n >= 2
 * @param slope - signal for each unit of dose, not zero
 * @returns the signal at the limit, and the dose that lifts the mean so far
 * @throws {RangeError} if there are too few readings or the slope is zero
 * @see IUPAC, Pure and Applied Chemistry 67 (1995), 1699-1723
 */
export function threeSigmaLimit(
  blank: ArrayLike<number>,
  slope: number,
): { readonly signal: number; readonly dose: number } {
  if (!(Math.abs(slope) > 0)) throw new RangeError("a slope of zero detects nothing");
  const rise = BLANK_SIGMAS * standardDeviation(blank);
  return { signal: mean(blank) + Math.sign(slope) * rise, dose: rise / Math.abs(slope) };
}

/** A dose tried several times. */
export interface DoseTrial {
  /** Positive, any unit. */
  readonly dose: number;
  readonly trials: number;
  readonly detected: number;
}

/** Doses detected half of the time, and 95 times in 100, in the unit of the trials. */
export interface DoseLimits {
  readonly lod50: number;
  readonly lod95: number;
}

/**
 * Single-hit model, chance of detection 1 - exp(-rate * dose), by maximum likelihood.
 *
 * @returns null if nothing, or everything, was detected: then no finite rate fits best
 * @throws {RangeError} if a dose or count is out of range
 * @see ISO 16140-2 (the model behind its relative level of detection); LOD95 / LOD50 = ln 20 / ln 2
 */
export function fitSingleHit(doses: readonly DoseTrial[]): (DoseLimits & { readonly rate: number }) | null {
  if (!hasBothOutcomes(doses)) return null;
  const slopeOfLikelihood = (rate: number) =>
    doses.reduce((sum, { dose, trials, detected }) => {
      return sum + (detected * dose) / Math.expm1(rate * dose) - (trials - detected) * dose;
    }, 0);
  // The slope falls from plus to minus as the rate grows, so bisection on the logarithm cannot miss.
  let [low, high] = [1, 1];
  while (slopeOfLikelihood(low) < 0) low /= 2;
  while (slopeOfLikelihood(high) > 0) high *= 2;
  for (let halving = 0; halving < 60; halving += 1) {
    const middle = Math.sqrt(low * high);
    if (slopeOfLikelihood(middle) > 0) low = middle;
    else high = middle;
  }
  const rate = Math.sqrt(low * high);
  return { rate, lod50: Math.LN2 / rate, lod95: Math.log(20) / rate };
}

const PROBIT_ROUNDS = 200;

/**
 * Probit model on the common logarithm of the dose, chance normalCdf(intercept + slope * log10 dose), by maximum
 * likelihood (Fisher scoring).
 *
 * @returns null if the trials do not pin the line down: one outcome only, one dose only, a falling or endless slope
 * @throws {RangeError} if a dose or count is out of range
 * @see Finney, Probit Analysis, 3rd edition (1971), chapter 4
 */
export function fitProbit(
  doses: readonly DoseTrial[],
): (DoseLimits & { readonly intercept: number; readonly slope: number }) | null {
  if (!hasBothOutcomes(doses)) return null;
  let [intercept, slope] = [0, 0];
  for (let round = 0; round < PROBIT_ROUNDS; round += 1) {
    const step = probitStep(doses, intercept, slope);
    if (step === null) return null;
    intercept += step.intercept;
    slope += step.slope;
    if (Math.abs(step.intercept) + Math.abs(step.slope) < 1e-10) {
      if (!(slope > 0)) return null;
      const doseAt = (share: number) => 10 ** ((normalQuantile(share) - intercept) / slope);
      return { intercept, slope, lod50: doseAt(0.5), lod95: doseAt(0.95) };
    }
  }
  return null;
}

function probitStep(doses: readonly DoseTrial[], intercept: number, slope: number) {
  let [s0, s1, i00, i01, i11] = [0, 0, 0, 0, 0];
  for (const { dose, trials, detected } of doses) {
    const x = Math.log10(dose);
    const z = intercept + slope * x;
    const [share, rest, density] = [normalCdf(z), normalCdf(-z), normalDensity(z)];
    if (!(share > 0 && rest > 0)) return null;
    const pull = (density * (detected - trials * share)) / (share * rest);
    const weight = (trials * density ** 2) / (share * rest);
    s0 += pull;
    s1 += pull * x;
    i00 += weight;
    i01 += weight * x;
    i11 += weight * x * x;
  }
  const determinant = i00 * i11 - i01 * i01;
  if (!(determinant > 1e-9 * i00 * i11)) return null;
  return { intercept: (i11 * s0 - i01 * s1) / determinant, slope: (i00 * s1 - i01 * s0) / determinant };
}

function hasBothOutcomes(doses: readonly DoseTrial[]): boolean {
  for (const { dose, trials, detected } of doses) {
    if (!(dose > 0 && dose < Infinity)) throw new RangeError(`a dose must be positive, got ${dose}`);
    const whole = Number.isSafeInteger(trials) && Number.isSafeInteger(detected);
    if (!whole || detected < 0 || detected > trials)
      throw new RangeError(`${detected} detected do not fit ${trials} trials`);
  }
  return (
    doses.some(({ detected }) => detected > 0) && doses.some(({ trials, detected }) => detected < trials)
  );
}
