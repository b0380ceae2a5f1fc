/** Control charts: has the instrument drifted, or is this its ordinary noise? */

/** How an exponentially weighted moving average is watched. */
export interface EwmaPlan {
  /** Value the process should have, in the unit of the readings. */
  readonly target: number;
  /** Standard deviation of one reading in control, same unit, positive. */
  readonly sigma: number;
  /** Weight of the newest reading, 0 < weight <= 1. */
  readonly weight: number;
  /** Half-width of the limits in standard deviations of the average, positive; 3 is common practice. */
  readonly limitInSigma: number;
}

/** One step of an EWMA chart, all in the unit of the readings. */
export interface EwmaPoint {
  readonly average: number;
  readonly lowerLimit: number;
  readonly upperLimit: number;
  readonly outside: boolean;
}

/**
 * EWMA chart that starts at the target, with the exact limits of each step (narrow at first).
 *
 * @param readings - shape [n], oldest first
 * @returns one point a reading
 * @throws {RangeError} if the plan is out of range
 * @see Roberts, Technometrics 1 (1959), 239-250; Lucas and Saccucci, Technometrics 32 (1990), 1-12
 */
export function ewmaChart(readings: ArrayLike<number>, plan: EwmaPlan): EwmaPoint[] {
  let average = plan.target;
  return Array.from(readings, (reading, at) => {
    average += plan.weight * (reading - average);
    const half = ewmaHalfWidth(plan, at + 1);
    return {
      average,
      lowerLimit: plan.target - half,
      upperLimit: plan.target + half,
      outside: Math.abs(average - plan.target) > half,
    };
  });
}

/**
 * Half-width of the EWMA limits after `count` readings, in the unit of `sigma`.
 *
 * @param count - whole, >= 1; Infinity gives the limits the chart settles to
 * @throws {RangeError} if the plan or the count is out of range
 */
export function ewmaHalfWidth(plan: EwmaPlan, count: number): number {
  const { sigma, weight, limitInSigma } = plan;
  if (!(sigma > 0)) throw new RangeError(`sigma must be positive, got ${sigma}`);
  if (!(weight > 0 && weight <= 1))
    throw new RangeError(`weight must be above 0 and at most 1, got ${weight}`);
  if (!(limitInSigma > 0)) throw new RangeError(`the limit must be positive, got ${limitInSigma}`);
  if (!(count >= 1)) throw new RangeError(`count must be 1 or more, got ${count}`);
  const settled = weight / (2 - weight);
  return limitInSigma * sigma * Math.sqrt(settled * (1 - (1 - weight) ** (2 * count)));
}

/** How a two-sided cumulative sum is watched; all in the unit of the readings. */
export interface CusumPlan {
  readonly target: number;
  /** Allowance K: half the shift worth noticing, >= 0. */
  readonly allowance: number;
  /** Decision interval H, positive. */
  readonly decision: number;
  /** Start of both sums, 0 if left out. Half of H is the fast initial response. */
  readonly headStart?: number;
}

/** A tabular CUSUM, sum by sum. */
export interface CusumChart {
  /** Sums that grow when readings run high, shape [n]. */
  readonly high: Float64Array;
  /** Sums that grow when readings run low, shape [n], also positive. */
  readonly low: Float64Array;
  /** Place (from 0) of the first reading at which a sum exceeds the decision interval, or null. */
  readonly firstSignal: number | null;
}

/**
 * Tabular CUSUM, two-sided. A sum equal to the decision interval is no signal.
 *
 * @param readings - shape [n], oldest first
 * @throws {RangeError} if the plan is out of range
 * @see Page, Biometrika 41 (1954), 100-115; Lucas and Crosier, Technometrics 24 (1982), 199-205 (head start)
 */
export function cusumChart(readings: ArrayLike<number>, plan: CusumPlan): CusumChart {
  const { target, allowance, decision, headStart = 0 } = plan;
  if (!(allowance >= 0)) throw new RangeError(`the allowance must be zero or more, got ${allowance}`);
  if (!(decision > 0)) throw new RangeError(`the decision interval must be positive, got ${decision}`);
  if (!(headStart >= 0)) throw new RangeError(`the head start must be zero or more, got ${headStart}`);
  const high = new Float64Array(readings.length);
  const low = new Float64Array(readings.length);
  let [above, below] = [headStart, headStart];
  let firstSignal: number | null = null;
  for (let i = 0; i < readings.length; i += 1) {
    above = Math.max(0, above + readings[i]! - target - allowance);
    below = Math.max(0, below + target - readings[i]! - allowance);
    high[i] = above;
    low[i] = below;
    if (firstSignal === null && (above > decision || below > decision)) firstSignal = i;
  }
  return { high, low, firstSignal };
}
