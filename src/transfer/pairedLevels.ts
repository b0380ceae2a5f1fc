import { extractFeatures } from "../features/extractFeatures.js";
import { recipeOf } from "../features/recipe.js";
import type { Nose } from "../nose/nose.js";
import { headspacePrefix, type Sniff } from "../sniff/sniff.js";

/** One plate or jar as both sniffers told it. Rows go together: the same moment of the headspace on either. */
export interface PairedLevels {
  readonly plate: string;
  /** Log levels in the reference of the nose's recipe, shape [rows][channels]. */
  readonly first: readonly Float64Array[];
  readonly second: readonly Float64Array[];
}

/**
 * Plates that both sniffers sniffed: levels at the first and the last quarter of each horizon, mean over the sniffs
 * of one plate. The names of the plates tell which sniffs belong together.
 *
 * @param first - sniffs of the sniffer that the nose was taught on
 * @param second - sniffs of the other one
 * @returns in the order in which the plates come in `second`
 */
export function pairedLevels(nose: Nose, first: readonly Sniff[], second: readonly Sniff[]): PairedLevels[] {
  return [...new Set(second.map(({ plate }) => plate))].flatMap((plate) => {
    const there = first.filter((sniff) => sniff.plate === plate);
    const here = second.filter((sniff) => sniff.plate === plate);
    const pairs = nose.horizons.flatMap(({ uptoMs }) => {
      const one = meanLevels(nose, there, uptoMs);
      const two = meanLevels(nose, here, uptoMs);
      return one === null || two === null ? [] : [{ one, two }];
    });
    if (pairs.length === 0) return [];
    return [{ plate, first: pairs.flatMap(({ one }) => one), second: pairs.flatMap(({ two }) => two) }];
  });
}

/** Level at the end, and at the beginning, of one stretch of the headspace; null where no sniff is that long. */
function meanLevels(nose: Nose, sniffs: readonly Sniff[], uptoMs: number): Float64Array[] | null {
  const recipe = recipeOf(nose.recipe);
  if (recipe === undefined) throw new RangeError(`recipe ${nose.recipe} is not known`);
  const channels = nose.sniffer.channels.length;
  // Whatever the nose makes of the course, it is made from these levels.
  const levels = { ...recipe, course: "end" } as const;
  const all = sniffs.flatMap((sniff) => {
    const features = extractFeatures(headspacePrefix(sniff, uptoMs), levels);
    return features === null ? [] : [features.values];
  });
  if (all.length === 0) return null;
  const meanOf = (at: number) => all.reduce((sum, values) => sum + values[at]!, 0) / all.length;
  const last = Float64Array.from({ length: channels }, (_, channel) => meanOf(channel));
  const early = last.map((level, channel) => level - meanOf(channels + channel));
  return [last, early];
}
