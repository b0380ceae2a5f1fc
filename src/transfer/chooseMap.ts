import type { SnifferMap } from "../features/snifferMap.js";
import { runThrough, type Steps } from "../kernel/steps.js";
import { fitMap, MAP_CHOICES, pairSums, totalSums, type MapChoice, type PairSums } from "./fitMap.js";
import type { PairedLevels } from "./pairedLevels.js";

/** What a map would have done for one pair that it was not fitted on. */
export interface HeldOutPair {
  readonly plate: string;
  /** Root mean square difference between the sniffers as they are, in taught standard deviations. */
  readonly before: number;
  /** The same after a map that was chosen and fitted without this pair. */
  readonly after: number;
  readonly map: SnifferMap;
}

export interface ChosenMap {
  readonly choice: MapChoice;
  readonly map: SnifferMap;
  /** One a pair; choosing the method was done anew without each. */
  readonly heldOut: readonly HeldOutPair[];
}

/** Fewest pairs that can be left out one by one, with a second one left out to choose the method. */
const FEWEST_PAIRS = 3;

/**
 * Chooses a method by leave-one-pair-out, and shows on each pair what a choice made without it would have brought
 * (nested, so that the choosing is paid for).
 *
 * @param pairs - at least three
 * @param sensors - sensor of each channel, in the order of the levels, shape [channels]
 * @param scale - of each channel, positive, shape [channels]: errors are counted in it
 * @throws {RangeError} with fewer than three pairs
 * @see Stone, J. R. Stat. Soc. B 36 (1974), 111-147 (choice and assessment by cross-validation)
 */
export function chooseMap(...given: Parameters<typeof choosingMap>): ChosenMap {
  return runThrough(choosingMap(...given));
}

/** The same, a pair at a time. */
export function* choosingMap(
  pairs: readonly PairedLevels[],
  sensors: readonly number[],
  scale: ArrayLike<number>,
): Steps<ChosenMap> {
  if (pairs.length < FEWEST_PAIRS)
    throw new RangeError(`a choice needs ${FEWEST_PAIRS} pairs, got ${pairs.length}`);
  const sums = pairs.map(pairSums);
  const best = (without: readonly number[]) => bestChoice(pairs, sums, sensors, scale, without);
  const heldOut: HeldOutPair[] = [];
  for (const [place, pair] of pairs.entries()) {
    const map = fitMap(totalSums(sums, [place]), best([place]), sensors);
    heldOut.push({
      plate: pair.plate,
      before: Math.sqrt(meanSquare(pair, null, scale)),
      after: Math.sqrt(meanSquare(pair, map, scale)),
      map,
    });
    yield heldOut.length / (pairs.length + 1);
  }
  const choice = best([]);
  return { choice, map: fitMap(totalSums(sums), choice, sensors), heldOut };
}

function bestChoice(
  pairs: readonly PairedLevels[],
  sums: readonly PairSums[],
  sensors: readonly number[],
  scale: ArrayLike<number>,
  without: readonly number[],
): MapChoice {
  const kept = [...pairs.keys()].filter((place) => !without.includes(place));
  const totals = kept.map((place) => totalSums(sums, [...without, place]));
  let best = MAP_CHOICES[0]!;
  let least = Infinity;
  for (const choice of MAP_CHOICES) {
    const error = kept.reduce(
      (sum, place, i) => sum + meanSquare(pairs[place]!, fitMap(totals[i]!, choice, sensors), scale),
      0,
    );
    // By a hair is no better: the simpler one stands.
    if (error < least * (1 - 1e-6)) [best, least] = [choice, error];
  }
  return best;
}

/** Mean squared difference of one pair in units of the scale, after a map or as it is. */
function meanSquare(
  { first, second }: PairedLevels,
  map: SnifferMap | null,
  scale: ArrayLike<number>,
): number {
  const channels = scale.length;
  let sum = 0;
  second.forEach((x, row) => {
    for (let to = 0; to < channels; to += 1) {
      let guess = map === null ? x[to]! : map.offset[to]!;
      if (map !== null)
        for (let from = 0; from < channels; from += 1) guess += map.matrix[to * channels + from]! * x[from]!;
      sum += ((guess - first[row]![to]!) / scale[to]!) ** 2;
    }
  });
  return sum / (second.length * channels);
}
