import type { RandomSource } from "../kernel/random.js";
import type { FilmAge } from "./channelResistance.js";
import { dailyWalk } from "./noise.js";

/** Drift of the logarithm of the clean resistance, standard deviation of one day's step. Invented for the model. */
const DRIFT_SD_PER_DAY = 0.012;
/** Loss of sensitivity in ordinary use, share of its logarithm a day. Invented; that it is lost is MX-10. */
const ORDINARY_LOSS_PER_DAY = 0.001;

/**
 * What the days of use have done to the films: a random walk of the resistance, one a film, and a slow loss of
 * sensitivity.
 *
 * @param days - whole, >= 0
 * @param extraLossPerDay - poisoning beside ordinary wear, >= 0
 * @param chanceOfDay - the source of chance of one day, counted from 1; each film has a day's stream of its own
 */
export function filmAge(
  days: number,
  extraLossPerDay: number,
  chanceOfDay: (day: number) => RandomSource,
): FilmAge {
  if (!(extraLossPerDay >= 0)) throw new RangeError(`loss a day: ${extraLossPerDay}`);
  const driftOf = (film: number) => dailyWalk(days, DRIFT_SD_PER_DAY, (day) => chanceOfDay(2 * day + film));
  return {
    logOhmDrift: [driftOf(0), driftOf(1)],
    sensitivityLeft: Math.exp(-(ORDINARY_LOSS_PER_DAY + extraLossPerDay) * days),
  };
}
