import type { StrangenessScale } from "./fitNeighbours.js";
import { type DishLabels, distancesOn } from "./foodDistances.js";
import type { HorizonTable } from "./rawTables.js";

/** Dishes are left out in so many lots, to save time. Common practice. */
const FOLDS = 5;
/** The plain distance must tell unknown food better by so much AUROC, or the local one stays. Common practice. */
const CLEAR_GAIN = 0.02;

/** Picks the strangeness that tells dishes left out from held-out plates of taught dishes, among the samples at hand. */
export function chooseScale(
  raw: HorizonTable,
  prepared: DishLabels,
  humidityShare: number,
  seed: number,
): StrangenessScale {
  const options = { humidityShare, folds: FOLDS, dishLots: FOLDS, seed };
  const [local = null, plain = null] =
    distancesOn(["local", "plain"], raw, prepared, options)?.map(({ auroc }) => auroc) ?? [];
  const isClear = local !== null && plain !== null && plain > local + CLEAR_GAIN;
  return isClear ? "plain" : "local";
}
