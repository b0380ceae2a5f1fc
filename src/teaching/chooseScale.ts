import type { StrangenessScale } from "./fitNeighbours.js";
import { foodDistances } from "./foodDistances.js";
import type { Prepared } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";

/** Dishes are left out in so many lots, to save time. Common practice. */
const FOLDS = 5;
/** The plain distance must tell unknown food better by so much AUROC, or the local one stays. Common practice. */
const CLEAR_GAIN = 0.02;

/** Picks the strangeness that tells dishes left out from held-out plates of taught dishes, among the samples at hand. */
export function chooseScale(
  raw: HorizonTable,
  prepared: Prepared,
  humidityShare: number,
  seed: number,
): StrangenessScale {
  const aurocOf = (scale: StrangenessScale) =>
    foodDistances(raw, prepared, { humidityShare, scale, folds: FOLDS, dishLots: FOLDS, seed })?.auroc ??
    null;
  const local = aurocOf("local");
  const plain = local === null ? null : aurocOf("plain");
  return local !== null && plain !== null && plain > local + CLEAR_GAIN ? "plain" : "local";
}
