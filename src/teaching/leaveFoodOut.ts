import type { Recipe } from "../features/recipe.js";
import { chooseScale } from "./chooseScale.js";
import { foodDistances, type UnlikeReport } from "./foodDistances.js";
import { horizonsOf } from "./horizonsOf.js";
import type { Prepared } from "./prepareSamples.js";
import { rawTables } from "./rawTables.js";

const FOLDS = 10;

/**
 * Leaves each dish out in turn, with the strangeness that these samples choose.
 *
 * @returns null if there are fewer than three dishes, or hardly one came up on two plates
 */
export function leaveFoodOut(
  prepared: Prepared,
  recipe: Recipe,
  humidityShare: number,
  seed: number,
): UnlikeReport | null {
  const raw = rawTables(prepared.sniffs, recipe, [horizonsOf(prepared.sniffs).at(-1)!])[0]!;
  const scale = chooseScale(raw, prepared, humidityShare, seed);
  return foodDistances(raw, prepared, { humidityShare, scale, folds: FOLDS, dishLots: Infinity, seed });
}
