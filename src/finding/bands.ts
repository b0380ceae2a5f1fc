/** The band edges: every number that decides what a finding says. They live here and nowhere else. */
import { clopperPearsonUpper } from "../stats/proportionInterval.js";

/** How often, at most, a plate without the group may lose *absent* from its set. An error here costs a meal; with
 * fewer than 9 held-out plates without the group nothing can be said at this rate. Angelopoulos and Bates 2021. */
export const FALSE_ALARM_RATE = 0.1;
/** Least calibrated probability to say *smelled*: nine to one. The conformal set bounds the alarms among plates without
 * the group, not the wrong ones among the alarms; this bounds those, at the same rate. */
export const SMELLED_LEAST_PROBABILITY = 1 - FALSE_ALARM_RATE;
/** *Smelled* is not said at all where more than this share of the held-out plates so called were wrong (with half a
 * plate added on either side): the calibration has then not held up outside its own plates. */
export const SMELLED_WRONG_SHARE = 0.1;
/** A plate farther from the taught plates than all but this share of the held-out plates is unlike them. The usual
 * 5 % level; it also is the share of known food that is called unknown. Common practice. */
export const UNLIKE_RATE = 0.05;
/** Least response, in standard deviations of the clean-air noise: Currie's detection limit for a well-known blank
 * at 5 % errors of either kind, 3.29. Currie, Anal. Chem. 40 (1968), 586-593. */
export const LEAST_SIGNAL_TO_NOISE = 3.29;

/**
 * How many of the held-out present plates may lie at or below the threshold for leaving out *present*.
 *
 * The largest number whose one-sided 95 % Clopper-Pearson bound meets the accepted rate, less one where that leaves
 * any: a threshold set right at the bound would fail its own held-out check half of the time.
 *
 * @param plates - held-out present plates, whole, >= 0
 * @param acceptedMissRate - fraction, 0 < rate < 1
 * @returns the number, or -1 if even no miss in so many plates would not show the rate
 */
export function allowedBelow(plates: number, acceptedMissRate: number): number {
  let allowed = -1;
  while (allowed + 1 < plates && clopperPearsonUpper(allowed + 1, plates) <= acceptedMissRate) allowed += 1;
  return allowed >= 1 ? allowed - 1 : allowed;
}
