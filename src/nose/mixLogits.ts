import { forestLogits } from "./forestLogits.js";
import { kernelLogits } from "./kernelLogits.js";
import { linearLogits } from "./linearLogits.js";
import { MODEL_KINDS, type ModelKind } from "./models.js";
import { nearestPlates, whitened } from "./neighbourLogits.js";
import { netLogits } from "./netLogits.js";
import type { HorizonNose, Nose } from "./nose.js";

/** Log-odds are bent towards this size before mixing, so that one overconfident model cannot outvote the rest. */
const LARGEST_LOGIT = 6;

/** Monotone and odd; near 0 it changes nothing. */
export function softClipped(logit: number): number {
  return LARGEST_LOGIT * Math.tanh(logit / LARGEST_LOGIT);
}

/** Log-odds ready to be mixed. Trees need no bending: their half vote on either side bounds them already. */
function readyToMix(kind: ModelKind | undefined, logit: number, treesStand: boolean): number {
  return kind === "trees" && treesStand ? logit : softClipped(logit);
}

/**
 * Weighted log-odds of several models for the same cases, as a nose taught today mixes them, shape [cases].
 *
 * @param logits - of each model, shape [models][cases]
 * @param weights - shape [models]
 */
export function mixedLogits(logits: readonly Float64Array[], weights: ArrayLike<number>): Float64Array {
  const mixed = new Float64Array(logits[0]?.length ?? 0);
  logits.forEach((model, i) => {
    if (weights[i] === 0) return;
    for (let at = 0; at < mixed.length; at += 1)
      mixed[at]! += weights[i]! * readyToMix(MODEL_KINDS[i], model[at]!, true);
  });
  return mixed;
}

/** What the models of one horizon say together. */
export interface Mixed {
  /** Mixed log-odds, shape [groups]. */
  readonly logits: Float64Array;
  /** How far from the taught plates, in units of how far those lie from each other. */
  readonly strangeness: number;
}

/**
 * Mixed log-odds of each group.
 *
 * @param x - standardised features, shape [features]
 */
export function mixLogits(nose: Nose, horizon: HorizonNose, x: Float64Array): Mixed {
  const groups = nose.groups.length;
  const nearest = nearestPlates(horizon.neighbours, whitened(horizon.neighbours, x), groups);
  const logits = new Float64Array(groups);
  MODEL_KINDS.forEach((kind, i) => {
    const weight = horizon.mix[i] ?? 0;
    if (weight === 0) return;
    const said = kind === "neighbours" ? nearest.logits : saidBy(kind, nose, horizon, x);
    said?.forEach((logit, group) => {
      logits[group]! += weight * readyToMix(kind, logit, nose.unbentTrees === true);
    });
  });
  return { logits, strangeness: nearest.strangeness };
}

/** Log-odds of one model, or null if the nose has none of that kind. */
function saidBy(
  kind: Exclude<ModelKind, "neighbours">,
  nose: Nose,
  horizon: HorizonNose,
  x: Float64Array,
): Float64Array | null {
  switch (kind) {
    case "nets":
      return nose.nets && netLogits(nose.nets, x);
    case "trees":
      return horizon.trees && forestLogits(horizon.trees, x, nose.groups.length);
    case "kernel":
      return horizon.kernel ? kernelLogits(horizon.kernel, x) : null;
    case "logistic":
    case "discriminant":
      return horizon[kind] && linearLogits(horizon[kind], x);
  }
}
