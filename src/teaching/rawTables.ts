import { extractFeatures } from "../features/extractFeatures.js";
import { featureCount, type Recipe } from "../features/recipe.js";
import { headspaceMs } from "../nose/answer.js";
import { headspacePrefix, type Sniff } from "../sniff/sniff.js";
import type { RawTable } from "./fitInput.js";
import type { HorizonSpan } from "./horizonsOf.js";

/** Features of all samples at one horizon, and which of them reached it. */
export interface HorizonTable extends RawTable {
  /** 1 if the sniff lasted to this horizon, shape [rows]. */
  readonly reached: Uint8Array;
}

/** Features of all samples under one recipe, one table for each horizon. */
export function rawTables(
  sniffs: readonly Sniff[],
  recipe: Recipe,
  spans: readonly HorizonSpan[],
): HorizonTable[] {
  const channels = sniffs[0]?.sniffer.channels.length ?? 0;
  const features = featureCount(recipe, channels);
  return spans.map(({ fromMs, uptoMs }) => {
    const values = new Float64Array(sniffs.length * features);
    const rise = new Float64Array(sniffs.length).fill(NaN);
    const reached = new Uint8Array(sniffs.length);
    sniffs.forEach((sniff, row) => {
      const made = extractFeatures(headspacePrefix(sniff, uptoMs), recipe);
      if (made === null) throw new RangeError(`sniff ${sniff.id} does not suit recipe ${recipe.id}`);
      values.set(made.values, row * features);
      rise[row] = made.humidityRise ?? NaN;
      reached[row] = headspaceMs(sniff) >= fromMs ? 1 : 0;
    });
    return { rows: sniffs.length, features, values, rise, reached };
  });
}
