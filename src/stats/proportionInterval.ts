/** Intervals for a proportion: what a count of hits and misses has shown, and what it has not. */
import { inverseRegularisedBeta, regularisedBeta } from "./beta.js";
import type { Interval } from "./interval.js";
import { normalQuantile } from "./normal.js";

/**
 * Wilson's score interval for a proportion, two-sided, without continuity correction.
 *
 * @param successes - whole, 0..trials
 * @param trials - whole, >= 0; no trials show nothing and give [0, 1]
 * @param confidence - fraction strictly between 0 and 1
 * @throws {RangeError} if a count or the confidence is out of range
 * @see Wilson, J. Am. Stat. Assoc. 22 (1927), 209-212; Newcombe, Stat. Med. 17 (1998), 857-872, method 3
 */
export function wilsonInterval(successes: number, trials: number, confidence = 0.95): Interval {
  checkCounts(successes, trials, confidence);
  if (trials === 0) return { low: 0, high: 1 };
  const z = normalQuantile((1 + confidence) / 2);
  const share = successes / trials;
  const middle = share + (z * z) / (2 * trials);
  const half = z * Math.sqrt((share * (1 - share)) / trials + (z * z) / (4 * trials * trials));
  const scale = 1 + (z * z) / trials;
  return {
    low: successes === 0 ? 0 : (middle - half) / scale,
    high: successes === trials ? 1 : (middle + half) / scale,
  };
}

/**
 * Clopper and Pearson's exact interval for a proportion, two-sided with equal tails.
 *
 * @param successes - whole, 0..trials
 * @param trials - whole, >= 0; no trials give [0, 1]
 * @param confidence - fraction strictly between 0 and 1
 * @throws {RangeError} if a count or the confidence is out of range
 * @see Clopper and Pearson, Biometrika 26 (1934), 404-413
 */
export function clopperPearson(successes: number, trials: number, confidence = 0.95): Interval {
  checkCounts(successes, trials, confidence);
  const oneSided = (1 + confidence) / 2;
  return {
    low: 1 - clopperPearsonUpper(trials - successes, trials, oneSided),
    high: clopperPearsonUpper(successes, trials, oneSided),
  };
}

/**
 * Exact one-sided upper bound of a rate: the highest rate at which so few events would still be seen with
 * chance `1 - confidence`.
 *
 * @param events - whole, 0..trials
 * @param trials - whole, >= 0; no trials show nothing and give 1
 * @param confidence - fraction strictly between 0 and 1
 * @returns a fraction 0..1
 * @throws {RangeError} if a count or the confidence is out of range
 * @see Clopper and Pearson, Biometrika 26 (1934), 404-413; with 0 events, 1 - (1 - confidence)^(1/trials)
 */
export function clopperPearsonUpper(events: number, trials: number, confidence = 0.95): number {
  checkCounts(events, trials, confidence);
  if (events === trials) return 1;
  if (events === 0) return -Math.expm1(Math.log1p(-confidence) / trials);
  return inverseRegularisedBeta(confidence, events + 1, trials - events);
}

/**
 * Least number of trials that shows a rate at or below `rate`, if that many events turn up among them.
 *
 * @param rate - the rate to show, fraction, 0 < rate <= 1
 * @param events - whole, >= 0
 * @param confidence - fraction strictly between 0 and 1
 * @returns least n with `clopperPearsonUpper(events, n, confidence) <= rate`
 * @throws {RangeError} if an argument is out of range
 */
export function trialsToShow(rate: number, events = 0, confidence = 0.95): number {
  if (!(rate > 0 && rate <= 1)) throw new RangeError(`rate must be above 0 and at most 1, got ${rate}`);
  checkCounts(events, events, confidence);
  // A bound lies at or below the rate where the beta distribution has so much of its share below it: no bound is sought.
  const shows = (trials: number) => regularisedBeta(rate, events + 1, trials - events) >= confidence;
  if (rate === 1) return events;
  let tooFew = events;
  let enough = Math.max(1, 2 * events);
  while (!shows(enough)) {
    tooFew = enough;
    enough *= 2;
  }
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (shows(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}

function checkCounts(events: number, trials: number, confidence: number): void {
  if (!Number.isSafeInteger(trials) || trials < 0)
    throw new RangeError(`trials must be whole, got ${trials}`);
  if (!Number.isSafeInteger(events) || events < 0 || events > trials)
    throw new RangeError(`a count must be whole and lie between 0 and ${trials}, got ${events}`);
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError(`confidence must lie between 0 and 1, got ${confidence}`);
}
