import { sameChannels } from "../kernel/channel.js";
import { extractFeatures, type FeatureNote } from "../features/extractFeatures.js";
import { otherView, type Recipe, recipeOf } from "../features/recipe.js";
import { headspacePrefix, type Sniff } from "../sniff/sniff.js";
import { calibrate, drawInOf } from "./calibrate.js";
import { mixLogits } from "./mixLogits.js";
import type { HorizonNose, Nose } from "./nose.js";
import { standardised } from "./standardised.js";

/** What a nose says of one sniff after one stretch of the headspace. */
export interface HorizonAnswer {
  /** Place of the horizon in the nose. */
  readonly horizon: number;
  /** Mixed log-odds, one for each group of the nose. */
  readonly logits: Float64Array;
  /** Calibrated probability of *present*, one for each group; null where the group could not be taught. */
  readonly probabilities: readonly (number | null)[];
  /** Relative distance to the nearest taught plates. */
  readonly strangeness: number;
  /** How many held-out plates were as strange among the taught ones, as a conformal p-value. */
  readonly familiarity: number;
  readonly signalToNoise: number | null;
  readonly notes: readonly FeatureNote[];
}

/** All that a nose can say of one sniff, or why it can say nothing. */
export type Answer =
  | { readonly kind: "answered"; readonly horizons: readonly HorizonAnswer[] }
  | { readonly kind: "otherChannels" }
  | { readonly kind: "noCleanAir" }
  | { readonly kind: "tooShort" };

/**
 * What the nose says of a sniff, once for each horizon that the sniff has reached. No band is drawn here.
 *
 * @throws {RangeError} if the nose names a recipe that this version does not know
 */
export function answerSniff(nose: Nose, sniff: Sniff): Answer {
  const recipe = recipeOf(nose.recipe);
  if (recipe === undefined) throw new RangeError(`recipe ${nose.recipe} is not known`);
  if (!sameChannels(nose.sniffer.channels, sniff.sniffer.channels)) return { kind: "otherChannels" };
  if (recipe.reference === "cleanAir" && sniff.cleanAir === undefined) return { kind: "noCleanAir" };
  const lengthMs = headspaceMs(sniff);
  const drawIn = drawInOf(nose);
  const horizons: HorizonAnswer[] = [];
  nose.horizons.forEach((horizon, place) => {
    if (lengthMs < horizon.fromMs) return;
    const prefix = headspacePrefix(sniff, horizon.uptoMs);
    const features = extractFeatures(prefix, recipe, nose.transfer?.map);
    if (features === null) return;
    const own = standardised(horizon.input, features.values, features.humidityRise);
    const other = otherSeen(nose, horizon, prefix, recipe);
    const { logits, strangeness } = mixLogits(nose, horizon, { own, other });
    horizons.push({
      horizon: place,
      logits,
      probabilities: nose.groups.map((group, i) => {
        const own = group.horizons[place];
        return own === undefined ? null : calibrate(own.calibration, logits[i]!, own.margin, drawIn);
      }),
      strangeness,
      familiarity: farShare(horizon.heldOutDistances, strangeness),
      signalToNoise: features.signalToNoise,
      notes: features.notes,
    });
  });
  return horizons.length === 0 ? { kind: "tooShort" } : { kind: "answered", horizons };
}

/** The other view of a sniff, if there is a kernel that looks at it. */
function otherSeen(nose: Nose, horizon: HorizonNose, sniff: Sniff, recipe: Recipe): Float64Array | null {
  const input = horizon.secondKernel?.input;
  const features = input && extractFeatures(sniff, otherView(recipe), nose.transfer?.map);
  return features ? standardised(input, features.values, features.humidityRise) : null;
}

/** How long the headspace was sniffed, from its first sweep to its last. */
export function headspaceMs(sniff: Sniff): number {
  return (sniff.headspace.atMs.at(-1) ?? 0) - (sniff.headspace.atMs[0] ?? 0);
}

/** Conformal p-value of a strangeness among held-out ones in rising order. */
function farShare(sorted: Float32Array, strangeness: number): number {
  let below = 0;
  while (below < sorted.length && sorted[below]! < strangeness) below += 1;
  return (1 + sorted.length - below) / (sorted.length + 1);
}
