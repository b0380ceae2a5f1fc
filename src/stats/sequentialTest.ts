/** Wald's sequential probability ratio test: stop as soon as the evidence is enough, either way. */
import { normalQuantile } from "./normal.js";

/** The two log-likelihood ratios at which a sequential test stops. */
export interface StoppingBounds {
  /** At or below: the first hypothesis is taken. Negative. */
  readonly low: number;
  /** At or above: the second hypothesis is taken. Positive. */
  readonly high: number;
}

/** What a sequential test says so far. */
export type SequentialDecision = "takeFirst" | "takeSecond" | "goOn";

/**
 * Wald's bounds for the natural logarithm of L(second) / L(first).
 *
 * @param falseAlarm - chance of taking the second when the first is true, strictly between 0 and 1
 * @param miss - chance of taking the first when the second is true; the two together below 1
 * @throws {RangeError} if a chance is out of range
 * @see Wald, Ann. Math. Stat. 16 (1945), 117-186
 */
export function stoppingBounds(falseAlarm: number, miss: number): StoppingBounds {
  if (!(falseAlarm > 0 && miss > 0 && falseAlarm + miss < 1))
    throw new RangeError(`error chances must be positive and add up to less than 1: ${falseAlarm}, ${miss}`);
  return { low: Math.log(miss / (1 - falseAlarm)), high: Math.log((1 - miss) / falseAlarm) };
}

/** Where a log-likelihood ratio, natural logarithm, leaves the test. @throws {RangeError} if it is not a number */
export function sequentialDecision(logLikelihoodRatio: number, bounds: StoppingBounds): SequentialDecision {
  if (Number.isNaN(logLikelihoodRatio)) throw new RangeError("the log-likelihood ratio must be a number");
  if (logLikelihoodRatio <= bounds.low) return "takeFirst";
  return logLikelihoodRatio >= bounds.high ? "takeSecond" : "goOn";
}

/** A sequential test of a low rate of events against a high one. */
export interface RatePlan {
  readonly lowRate: number;
  readonly highRate: number;
  readonly bounds: StoppingBounds;
  /** Log-likelihood ratio that one event adds; positive. */
  readonly eventStep: number;
  /** Log-likelihood ratio that one trial without the event adds; negative. */
  readonly nonEventStep: number;
}

/**
 * Plan of a sequential test for a rate.
 *
 * @param lowRate - first hypothesis, fraction, 0 < lowRate < highRate < 1
 * @param highRate - second hypothesis, fraction
 * @param falseAlarm - chance of taking the high rate when the low one is true
 * @param miss - chance of taking the low rate when the high one is true
 * @throws {RangeError} if an argument is out of range
 * @see Wald (1945); NIST/SEMATECH e-Handbook of Statistical Methods, section 6.2.6
 */
export function ratePlan(lowRate: number, highRate: number, falseAlarm: number, miss: number): RatePlan {
  if (!(lowRate > 0 && lowRate < highRate && highRate < 1))
    throw new RangeError(`rates must be fractions with the low one first: ${lowRate}, ${highRate}`);
  return {
    lowRate,
    highRate,
    bounds: stoppingBounds(falseAlarm, miss),
    eventStep: Math.log(highRate / lowRate),
    nonEventStep: Math.log((1 - highRate) / (1 - lowRate)),
  };
}

/** What the counts so far say about the rate. @throws {RangeError} if a count is negative or not whole */
export function rateDecision(plan: RatePlan, events: number, trials: number): SequentialDecision {
  checkCounts(events, trials);
  return sequentialDecision(events * plan.eventStep + (trials - events) * plan.nonEventStep, plan.bounds);
}

/** The two parallel lines of a sequential sampling plan: slope * trials - acceptOffset, slope * trials + rejectOffset. */
export function decisionLines(plan: RatePlan): {
  readonly slope: number;
  readonly acceptOffset: number;
  readonly rejectOffset: number;
} {
  const gain = plan.eventStep - plan.nonEventStep;
  return {
    slope: -plan.nonEventStep / gain,
    acceptOffset: -plan.bounds.low / gain,
    rejectOffset: plan.bounds.high / gain,
  };
}

/** Most events after `trials` at which the low rate is taken, or null while none is few enough. */
export function acceptanceNumber(plan: RatePlan, trials: number): number | null {
  checkCounts(0, trials);
  const { slope, acceptOffset } = decisionLines(plan);
  const line = Math.floor(slope * trials - acceptOffset);
  return line >= 0 ? line : null;
}

/** Fewest events after `trials` at which the high rate is taken, or null while even `trials` events are too few. */
export function rejectionNumber(plan: RatePlan, trials: number): number | null {
  checkCounts(0, trials);
  const { slope, rejectOffset } = decisionLines(plan);
  const line = Math.ceil(slope * trials + rejectOffset);
  return line <= trials ? line : null;
}

/**
 * Wald's approximation to the mean number of trials, which neglects the overshoot at the end.
 *
 * @returns trials at the low rate, at the high rate, and at the slope between them where the test runs longest
 */
export function expectedTrials(plan: RatePlan): {
  readonly atLowRate: number;
  readonly atHighRate: number;
  readonly atSlope: number;
} {
  const { low, high } = plan.bounds;
  const drift = (rate: number) => rate * plan.eventStep + (1 - rate) * plan.nonEventStep;
  const { slope, acceptOffset, rejectOffset } = decisionLines(plan);
  const { whenFirst, whenSecond } = expectedEnd(low, high);
  return {
    atLowRate: whenFirst / drift(plan.lowRate),
    atHighRate: whenSecond / drift(plan.highRate),
    atSlope: (acceptOffset * rejectOffset) / (slope * (1 - slope)),
  };
}

/**
 * Trials to tell a normal mean from one shifted by `shiftInSd` standard deviations: by the sequential test on the
 * average (Wald's approximation), and by one fixed number of readings.
 *
 * @param shiftInSd - not zero
 * @throws {RangeError} if an argument is out of range
 * @see Wald (1945)
 */
export function trialsForShift(
  shiftInSd: number,
  falseAlarm: number,
  miss: number,
): { readonly sequential: number; readonly fixed: number } {
  if (!(Math.abs(shiftInSd) > 0)) throw new RangeError("the shift must not be zero");
  const { low, high } = stoppingBounds(falseAlarm, miss);
  const driftPerTrial = shiftInSd ** 2 / 2;
  const distance = normalQuantile(1 - falseAlarm) + normalQuantile(1 - miss);
  return {
    sequential: -expectedEnd(low, high).whenFirst / driftPerTrial,
    fixed: (distance / shiftInSd) ** 2,
  };
}

/** Mean log-likelihood ratio at the end; the error chances are read back from the bounds. */
function expectedEnd(low: number, high: number): { readonly whenFirst: number; readonly whenSecond: number } {
  const span = Math.exp(high) - Math.exp(low);
  const falseAlarm = -Math.expm1(low) / span;
  const miss = Math.exp(low) * (1 - falseAlarm);
  return {
    whenFirst: (1 - falseAlarm) * low + falseAlarm * high,
    whenSecond: miss * low + (1 - miss) * high,
  };
}

function checkCounts(events: number, trials: number): void {
  if (!Number.isSafeInteger(trials) || trials < 0)
    throw new RangeError(`trials must be whole, got ${trials}`);
  if (!Number.isSafeInteger(events) || events < 0 || events > trials)
    throw new RangeError(`events must be whole and lie between 0 and ${trials}, got ${events}`);
}
