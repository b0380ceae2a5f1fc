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

/**
 * How much log-odds still say at a distance from all that was taught: the same as ever at the usual distance, half at
 * three times that, and nothing in the end.
 *
 * @param strangeness - distance to the nearest taught plates, >= 0, in any unit
 * @param usual - the same of the typical plate that was held out, in the same unit, positive
 * @returns 0 to 2; 1 if nothing usual is known
 */
export function shareAtDistance(strangeness: number, usual: number | undefined): number {
  return usual === undefined ? 1 : 2 / (1 + strangeness / usual);
}

/** Log-odds ready to be mixed. Kernels need no drawing in: their bells say nothing far from where they stand. */
function readyToMix(kind: ModelKind, logit: number, share: number, unbentTrees: boolean): number {
  const drawn = kind === "kernel" || kind === "secondKernel" ? logit : share * logit;
  return kind === "trees" && unbentTrees ? drawn : softClipped(drawn);
}

/**
 * Held-out log-odds ready to be mixed, as a nose taught today readies its own.
 *
 * @param logits - of each model in the order of MODEL_KINDS, shape [models][rows, groups]
 * @param strangeness - shape [rows]
 * @param usual - usual distance, as in `shareAtDistance`
 */
export function readyLogits(
  logits: readonly Float64Array[],
  strangeness: Float64Array,
  usual: number | undefined,
): Float64Array[] {
  const shares = strangeness.map((one) => shareAtDistance(one, usual));
  return MODEL_KINDS.map((kind, i) => {
    const model = logits[i]!;
    const groups = model.length / shares.length;
    return model.map((logit, at) => readyToMix(kind, logit, shares[Math.floor(at / groups)]!, true));
  });
}

/**
 * Weighted log-odds of several models for the same cases, shape [cases].
 *
 * @param logits - of each model, ready to be mixed, shape [models][cases]
 * @param weights - shape [models]
 */
export function mixedLogits(logits: readonly Float64Array[], weights: ArrayLike<number>): Float64Array {
  const mixed = new Float64Array(logits[0]?.length ?? 0);
  logits.forEach((model, i) => {
    if (weights[i] === 0) return;
    for (let at = 0; at < mixed.length; at += 1) mixed[at]! += weights[i]! * model[at]!;
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

/** A sniff as standardised features, shape [features] of each view. */
export interface Views {
  readonly own: Float64Array;
  /** Only where the nose has a second kernel. */
  readonly other: Float64Array | null;
}

/** Mixed log-odds of each group. */
export function mixLogits(nose: Nose, horizon: HorizonNose, views: Views): Mixed {
  const groups = nose.groups.length;
  const nearest = nearestPlates(horizon.neighbours, whitened(horizon.neighbours, views.own), groups);
  const unbentTrees = nose.unbentTrees === true;
  const share = shareAtDistance(nearest.strangeness, horizon.usualDistance);
  const logits = new Float64Array(groups);
  MODEL_KINDS.forEach((kind, i) => {
    const weight = horizon.mix[i] ?? 0;
    if (weight === 0) return;
    const said = kind === "neighbours" ? nearest.logits : saidBy(kind, nose, horizon, views);
    said?.forEach((logit, group) => {
      logits[group]! += weight * readyToMix(kind, logit, share, unbentTrees);
    });
  });
  return { logits, strangeness: nearest.strangeness };
}

/** Log-odds of one model, or null if the nose has none of that kind. */
function saidBy(
  kind: Exclude<ModelKind, "neighbours">,
  nose: Nose,
  horizon: HorizonNose,
  { own: x, other }: Views,
): Float64Array | null {
  switch (kind) {
    case "nets":
      return nose.nets && netLogits(nose.nets, x);
    case "trees":
      return horizon.trees && forestLogits(horizon.trees, x, nose.groups.length);
    case "kernel":
      return horizon.kernel ? kernelLogits(horizon.kernel, x) : null;
    case "secondKernel":
      return horizon.secondKernel && other ? kernelLogits(horizon.secondKernel.kernel, other) : null;
    case "logistic":
    case "discriminant":
      return horizon[kind] && linearLogits(horizon[kind], x);
  }
}
