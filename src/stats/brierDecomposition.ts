import { checkProbabilities } from "./checkPairs.js";

/** Murphy's parts of the Brier score: brier = reliability - resolution + uncertainty. */
export interface BrierParts {
  /** Mean squared difference of forecast and outcome, 0 (best) to 1. */
  readonly brier: number;
  /** How far each forecast value lies from its observed share; 0 is best. */
  readonly reliability: number;
  /** How far the observed shares lie from the overall share; more is better. */
  readonly resolution: number;
  /** Variance of the outcome itself, 0 to 0.25; no forecast changes it. */
  readonly uncertainty: number;
  /** Share of outcomes that happened. */
  readonly baseRate: number;
}

/**
 * Murphy's decomposition of the Brier score, over the distinct forecast values, where it is exact.
 *
 * @param predicted - forecasts, shape [n], fractions
 * @param happened - outcomes, shape [n], 0 or 1
 * @throws {RangeError} if n = 0, the lengths differ or a value is out of range
 * @see Murphy, J. Applied Meteorology 12 (1973), 595-600
 */
export function brierDecomposition(predicted: ArrayLike<number>, happened: ArrayLike<number>): BrierParts {
  checkProbabilities(predicted, happened);
  const count = predicted.length;
  const groups = new Map<number, { hits: number; count: number }>();
  let hitsInAll = 0;
  let squares = 0;
  for (let i = 0; i < count; i += 1) {
    const group = groups.get(predicted[i]!) ?? { hits: 0, count: 0 };
    group.hits += happened[i]!;
    group.count += 1;
    groups.set(predicted[i]!, group);
    hitsInAll += happened[i]!;
    squares += (predicted[i]! - happened[i]!) ** 2;
  }
  const baseRate = hitsInAll / count;
  let reliability = 0;
  let resolution = 0;
  for (const [forecast, group] of groups) {
    const observed = group.hits / group.count;
    reliability += (group.count / count) * (forecast - observed) ** 2;
    resolution += (group.count / count) * (observed - baseRate) ** 2;
  }
  return {
    brier: squares / count,
    reliability,
    resolution,
    uncertainty: baseRate * (1 - baseRate),
    baseRate,
  };
}
