import { forestLogits } from "../nose/forestLogits.js";
import { kernelLogits } from "../nose/kernelLogits.js";
import { linearLogits } from "../nose/linearLogits.js";
import { MODEL_KINDS, type ModelKind, type NetEnsemble } from "../nose/models.js";
import { nearestPlates, whitened } from "../nose/neighbourLogits.js";
import { netLogits } from "../nose/netLogits.js";
import type { FittedHorizon } from "./fitHorizon.js";
import { rowOf } from "./table.js";

/** Log-odds of every model for every sniff, by models that never saw its plate; one horizon. */
export interface HeldOutLogits {
  /** In the order of MODEL_KINDS, each of shape [rows, groups]. */
  readonly models: readonly Float64Array[];
  /** Strangeness among the taught plates, shape [rows]. */
  readonly strangeness: Float64Array;
}

export function emptyHeldOut(rows: number, groups: number): HeldOutLogits {
  return {
    models: MODEL_KINDS.map(() => new Float64Array(rows * groups)),
    strangeness: new Float64Array(rows),
  };
}

/** Fills in the plain models' answers for the rows of one fold. */
export function judgePlain(into: HeldOutLogits, fitted: FittedHorizon, rows: readonly number[]): void {
  const { groups } = fitted.table;
  for (const row of rows) {
    const x = rowOf(fitted.table, row);
    const nearest = nearestPlates(fitted.neighbours, whitened(fitted.neighbours, x), groups);
    if (fitted.logistic !== null) put(into, "logistic", row, linearLogits(fitted.logistic, x));
    if (fitted.discriminant !== null) put(into, "discriminant", row, linearLogits(fitted.discriminant, x));
    if (fitted.trees !== null) put(into, "trees", row, forestLogits(fitted.trees, x, groups));
    if (fitted.kernel !== null) put(into, "kernel", row, kernelLogits(fitted.kernel, x));
    put(into, "neighbours", row, nearest.logits);
    into.strangeness[row] = nearest.strangeness;
  }
}

/** Fills in the nets' answers for the rows of one fold. */
export function judgeNets(
  into: HeldOutLogits,
  nets: NetEnsemble,
  x: Float64Array,
  rows: readonly number[],
): void {
  const features = nets.inWeights.length / (nets.members * nets.hidden);
  for (const row of rows)
    put(into, "nets", row, netLogits(nets, x.subarray(row * features, (row + 1) * features)));
}

function put(into: HeldOutLogits, kind: ModelKind, row: number, logits: Float64Array): void {
  into.models[MODEL_KINDS.indexOf(kind)]!.set(logits, row * logits.length);
}
