import { slipRate } from "../nose/calibrate.js";
import { mixedLogits } from "../nose/mixLogits.js";
import { MODEL_KINDS, type ModelChoice, type ModelKind } from "../nose/models.js";
import type { RivalReport } from "../nose/report.js";
import { sigmoid } from "../stats/logistic.js";
import { balancedAccuracy, logLoss, rocAuc } from "../stats/scores.js";
import { chooseCalibrations, sharedTemperature } from "./chooseCalibration.js";
import type { HeldOutLogits } from "./heldOutLogits.js";

/** The cases of one horizon: every sniff and every group that can be judged, in one list. */
export interface JudgedCases {
  /** Rows that are judged. */
  readonly rows: readonly number[];
  /** Groups that are judged, as numbers. */
  readonly groups: readonly number[];
  readonly groupCount: number;
  /** Shape [all rows, groupCount]. */
  readonly truth: Int8Array;
  /** Shape [all rows]. */
  readonly weight: Float64Array;
  readonly folds: Int32Array;
}

/** A model leaves the mixture only if the rest is better by this share of the log loss without it: the mean of many is
 * hard to beat, and a choice among few plates is partly luck. Common practice. */
const CLEAR_GAIN = 0.03;

/** A model answers alone only if it is better by this share: the best of several is partly the luckiest. */
const LONE_GAIN = 0.15;
/** The same for the trees: a forest is the mean of many already. */
const LONE_FOREST_GAIN = 0.04;

/** A way to turn the models' log-odds into one. */
export interface MixChoice {
  readonly chosen: ModelChoice;
  /** Models in use; each weighs the same. */
  readonly kinds: readonly ModelKind[];
  readonly rivals: readonly RivalReport[];
}

/**
 * The models whose mean log-odds are best held out: all of them at first; then the one that harms most is left out, as
 * long as that is clearly better; at last one alone, if it is much better. No weights are fitted: on food that was
 * never taught, fitted ones do worse than equal ones.
 *
 * @see Clemen, Int. J. Forecasting 5 (1989), 559-583 (the plain mean of forecasts); Caruana and others, Proc. 21st ICML
 *   (2004), 137-144 (choice of an ensemble's members by held-out loss)
 */
export function chooseMix(heldOut: HeldOutLogits, cases: JudgedCases, hasNets: boolean): MixChoice {
  const all = MODEL_KINDS.filter((kind) => hasNets || kind !== "nets");
  const lossOf = (kinds: readonly ModelKind[]) => {
    const logits = mixedLogits(heldOut.models, equalMix(kinds));
    return sharedTemperature(cases.groups.map((group) => groupCases(logits, cases, group))).loss;
  };
  let kinds: readonly ModelKind[] = all;
  let loss = lossOf(kinds);
  while (kinds.length > 2) {
    const fewer = kinds.map((left) => kinds.filter((kind) => kind !== left));
    const losses = fewer.map(lossOf);
    const least = Math.min(...losses);
    if (!(least < loss * (1 - CLEAR_GAIN))) break;
    kinds = fewer[losses.indexOf(least)] ?? kinds;
    loss = least;
  }
  const alone = all
    .map((kind) => ({ kind, loss: lossOf([kind]), gain: kind === "trees" ? LONE_FOREST_GAIN : LONE_GAIN }))
    .filter((one) => one.loss < loss * (1 - one.gain))
    .sort((a, b) => a.loss - b.loss)[0];
  if (alone !== undefined) kinds = [alone.kind];
  const scored = (name: ModelChoice, mix: readonly ModelKind[]) => ({
    name,
    ...scoresOf(mixedLogits(heldOut.models, equalMix(mix)), cases),
  });
  const rivals = all.map((kind) => scored(kind, [kind]));
  return kinds.length === 1 && kinds[0] !== undefined
    ? { chosen: kinds[0], kinds, rivals }
    : { chosen: "mix", kinds, rivals: [...rivals, scored("mix", kinds)] };
}

/** The same weight for each of the kinds, in the order of MODEL_KINDS. */
export function equalMix(kinds: readonly ModelKind[]): Float32Array {
  return Float32Array.from(MODEL_KINDS, (kind) => (kinds.includes(kind) ? 1 / kinds.length : 0));
}

/** Mean scores over the groups, calibrated without the fold in question. */
function scoresOf(logits: Float64Array, cases: JudgedCases): Omit<RivalReport, "name"> {
  const known = cases.groups.map((group) => groupCases(logits, cases, group));
  const calibrated = chooseCalibrations(known);
  const each = known.map((one, at) => {
    const { probabilities } = calibrated[at]!;
    const answered = Uint8Array.from(probabilities, (p) => (p >= 0.5 ? 1 : 0));
    return {
      logLoss: logLoss(probabilities, one.truth),
      auc: rocAuc(Float64Array.from(one.logits, sigmoid), one.truth),
      balancedAccuracy: balancedAccuracy(answered, one.truth),
    };
  });
  const mean = (values: (number | null)[]) => {
    const known = values.filter((value) => value !== null);
    return known.length === 0 ? null : known.reduce((a, b) => a + b, 0) / known.length;
  };
  return {
    logLoss: mean(each.map((one) => one.logLoss)) ?? NaN,
    auc: mean(each.map((one) => one.auc)),
    balancedAccuracy: mean(each.map((one) => one.balancedAccuracy)),
  };
}

/** The judged sniffs of one group whose truth is known, ready for calibration. */
export function groupCases(logits: Float64Array, cases: JudgedCases, group: number) {
  const at = (row: number) => row * cases.groupCount + group;
  const rows = cases.rows.filter((row) => cases.truth[at(row)]! >= 0);
  const plateCount = rows.reduce((sum, row) => sum + cases.weight[row]!, 0);
  const present = rows.reduce((sum, row) => sum + cases.weight[row]! * cases.truth[at(row)]!, 0);
  return {
    rows,
    logits: Float64Array.from(rows, (row) => logits[at(row)]!),
    truth: Uint8Array.from(rows, (row) => cases.truth[at(row)]!),
    folds: Int32Array.from(rows, (row) => cases.folds[row]!),
    weight: Float64Array.from(rows, (row) => cases.weight[row]!),
    scarcerPlates: Math.min(present, plateCount - present),
    margin: slipRate(plateCount),
  };
}
