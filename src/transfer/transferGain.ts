import type { TransferGain } from "../nose/nose.js";
import { meanInterval, studentQuantile } from "../stats/meanInterval.js";
import { mean, standardDeviation } from "../stats/summary.js";
import type { HeldOutPair } from "./chooseMap.js";

/** Fewest pairs that a transfer rests on. With five, all of them better is just what chance does not do at the usual
 * level: one in 2^5 = 32, below 5 % (sign test). */
export const LEAST_PAIRS = 5;
/** Differences below this share of a taught standard deviation are no differences; it keeps the logarithm finite. */
const LEAST_DIFFERENCE = 1e-6;
/** More pairs than this nobody will sniff: then no number is named. Common practice. */
const MOST_PAIRS = 60;

/** What the map brought on pairs that it was not fitted on. @param heldOut - at least two */
export function transferGain(heldOut: readonly HeldOutPair[]): TransferGain {
  const logs = logRatios(heldOut);
  const { low, high } = meanInterval(logs);
  const rootMean = (of: (pair: HeldOutPair) => number) =>
    Math.max(LEAST_DIFFERENCE, Math.sqrt(mean(heldOut.map((pair) => of(pair) ** 2))));
  return {
    before: rootMean(({ before }) => before),
    after: rootMean(({ after }) => after),
    factor: Math.exp(mean(logs)),
    low: Math.exp(low),
    high: Math.exp(high),
  };
}

/**
 * How many more pairs would bring the interval clear of no gain if they went like those so far.
 *
 * @returns null where the map helps on average not at all, or where no number of pairs that anybody would sniff does
 */
export function pairsNeeded(heldOut: readonly HeldOutPair[]): number | null {
  const logs = logRatios(heldOut);
  const middle = mean(logs);
  const spread = standardDeviation(logs);
  for (let pairs = logs.length + 1; middle > 0 && pairs <= MOST_PAIRS; pairs += 1)
    if (middle > (studentQuantile(0.975, pairs - 1) * spread) / Math.sqrt(pairs)) return pairs - logs.length;
  return null;
}

function logRatios(heldOut: readonly HeldOutPair[]): number[] {
  const least = (value: number) => Math.max(LEAST_DIFFERENCE, value);
  return heldOut.map(({ before, after }) => Math.log(least(before) / least(after)));
}
