/** The binomial distribution, by the incomplete beta function. */
import { regularisedBeta } from "./beta.js";

/**
 * Chance of at most `events` in `trials`.
 *
 * @param events - whole; below 0 gives 0, `trials` or more gives 1
 * @param trials - whole, >= 0
 * @param rate - chance of an event in one trial, fraction
 * @throws {RangeError} if an argument is out of range
 * @see NIST Digital Library of Mathematical Functions 8.17.5
 */
export function binomialCdf(events: number, trials: number, rate: number): number {
  checkInput(events, trials, rate);
  if (events < 0) return 0;
  if (events >= trials) return 1;
  return regularisedBeta(1 - rate, trials - events, events + 1);
}

/** Chance of `events` or more in `trials`; arguments and errors as {@link binomialCdf}. */
export function binomialUpperTail(events: number, trials: number, rate: number): number {
  checkInput(events, trials, rate);
  if (events <= 0) return 1;
  if (events > trials) return 0;
  return regularisedBeta(rate, events, trials - events + 1);
}

function checkInput(events: number, trials: number, rate: number): void {
  if (!Number.isSafeInteger(trials) || trials < 0)
    throw new RangeError(`trials must be whole, got ${trials}`);
  if (!Number.isSafeInteger(events)) throw new RangeError(`events must be whole, got ${events}`);
  if (!(rate >= 0 && rate <= 1)) throw new RangeError(`rate must be a fraction, got ${rate}`);
}
