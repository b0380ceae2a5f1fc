import { slipRate } from "../nose/calibrate.js";
import { mixedLogits } from "../nose/mixLogits.js";
import { MODEL_KINDS, type ModelChoice, type ModelKind } from "../nose/models.js";
import type { RivalReport } from "../nose/report.js";
import { balancedAccuracy, logLoss, rocAuc } from "../stats/scores.js";
import { mean, standardDeviation } from "../stats/summary.js";
import { sharedTemperature } from "./chooseCalibration.js";

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
  /** Number of each row's plate, shape [all rows]. */
  readonly plates: Int32Array;
  readonly folds: Int32Array;
}

/**
 * A change of the mixture must gain so many standard errors of its gain over the plates: a choice among few plates is
 * partly luck. One is the rule of Breiman and others, below.
 */
const CLEAR_GAIN_ERRORS = 1;
/**
 * Where the choice begins: a straight boundary and two smooth ones. With trees and neighbours from the beginning
 * varieties of one food were told apart less well, on the open data; so they and the rest must show what they gain.
 */
export const USUAL_KINDS: readonly ModelKind[] = ["discriminant", "kernel", "secondKernel"];

/** A way to turn the models' log-odds into one. */
export interface MixChoice {
  readonly chosen: ModelChoice;
  /** Models in use; each weighs the same. */
  readonly kinds: readonly ModelKind[];
  readonly rivals: readonly RivalReport[];
}

/**
 * The models whose mean log-odds are best held out: the usual ones at first; then one leaves or another joins, whichever
 * is best, as long as that is clearly better; at last one alone, if that is clearly better again. Trees, being the mean
 * of many already, answer alone wherever no mixture is better. No weights are fitted: on food that was never taught,
 * fitted ones do worse than equal ones.
 *
 * @param heldOut - log-odds ready to be mixed, in the order of MODEL_KINDS, each of shape [all rows, groupCount]
 * @see Clemen, Int. J. Forecasting 5 (1989), 559-583 (the plain mean of forecasts); Caruana and others, Proc. 21st ICML
 *   (2004), 137-144 (choice of an ensemble's members by held-out loss); Breiman and others, Classification and Regression
 *   Trees (1984), section 3.4.3 (choice by standard errors)
 */
export function chooseMix(heldOut: readonly Float64Array[], cases: JudgedCases, hasNets: boolean): MixChoice {
  const all = MODEL_KINDS.filter((kind) => hasNets || kind !== "nets");
  const judge = (kinds: readonly ModelKind[]): JudgedMix => ({
    kinds,
    ...judgeLogits(mixedLogits(heldOut, equalMix(kinds)), cases),
  });
  let mixture = judge(USUAL_KINDS);
  for (;;) {
    const next = leastLoss(oneChanged(mixture.kinds, all).map(judge));
    if (next === undefined || !(gainInErrors(mixture, next) > CLEAR_GAIN_ERRORS)) break;
    mixture = next;
  }
  const errors = (kind?: ModelKind) => (kind === "trees" ? 0 : CLEAR_GAIN_ERRORS);
  const alone = all.map((kind) => judge([kind]));
  const better = alone.filter((one) => gainInErrors(mixture, one) > errors(one.kinds[0]));
  const best = leastLoss(better) ?? mixture;
  const told = best === mixture ? [...alone, mixture] : alone;
  return {
    chosen: nameOf(best),
    kinds: best.kinds,
    rivals: told.map((one) => ({ name: nameOf(one), ...scoresOf(one) })),
  };
}

function nameOf({ kinds: [kind, ...others] }: JudgedMix): ModelChoice {
  return kind === undefined || others.length > 0 ? "mix" : kind;
}

/** The mixtures that lack one of the kinds, but are still mixtures, and those with one more, in the order of MODEL_KINDS. */
function oneChanged(kinds: readonly ModelKind[], all: readonly ModelKind[]): ModelKind[][] {
  return all
    .map((one) => all.filter((kind) => kinds.includes(kind) !== (kind === one)))
    .filter((changed) => changed.length > 1);
}

/** What log-odds say of the judged cases, calibrated without the fold in question. */
interface Judged {
  readonly groups: readonly JudgedGroup[];
  /** Log loss of each judged plate over all groups, shape [plates]. */
  readonly losses: Float64Array;
}

/** The same of some models' mean. */
interface JudgedMix extends Judged {
  readonly kinds: readonly ModelKind[];
}

/** Shapes [cases]. */
interface JudgedGroup {
  readonly logits: Float64Array;
  readonly truth: Uint8Array;
  readonly probabilities: Float32Array;
}

/** Calibrates log-odds with one temperature for all groups, each fold without itself, and counts their loss. */
export function judgeLogits(logits: Float64Array, cases: JudgedCases): Judged {
  const known = cases.groups.map((group) => groupCases(logits, cases, group));
  const losses = new Map(cases.rows.map((row) => [cases.plates[row]!, 0]));
  const groups = sharedTemperature(known).map(({ probabilities }, at) => {
    const { rows, truth, weight, logits: own } = known[at]!;
    rows.forEach((row, i) => {
      const plate = cases.plates[row]!;
      const likelihood = truth[i] === 1 ? probabilities[i]! : 1 - probabilities[i]!;
      losses.set(plate, losses.get(plate)! - weight[i]! * Math.log(likelihood));
    });
    return { logits: own, truth, probabilities };
  });
  return { groups, losses: Float64Array.from(losses.values()) };
}

function leastLoss(choices: readonly JudgedMix[]): JudgedMix | undefined {
  return [...choices].sort((one, other) => mean(one.losses) - mean(other.losses))[0];
}

/** Log loss that a change saves, in standard errors of the saving over the plates. */
function gainInErrors(before: Judged, after: Judged): number {
  if (before.losses.length < 2) return 0;
  const gains = before.losses.map((loss, plate) => loss - after.losses[plate]!);
  const gain = mean(gains);
  return gain === 0 ? 0 : gain / (standardDeviation(gains) / Math.sqrt(gains.length));
}

/** The same weight for each of the kinds, in the order of MODEL_KINDS. */
export function equalMix(kinds: readonly ModelKind[]): Float32Array {
  return Float32Array.from(MODEL_KINDS, (kind) => (kinds.includes(kind) ? 1 / kinds.length : 0));
}

/** Mean scores over the groups, under the calibration that the choice rests on: so the models can be compared. */
function scoresOf({ groups }: Judged): Omit<RivalReport, "name"> {
  const each = groups.map(({ logits, truth, probabilities }) => ({
    logLoss: logLoss(probabilities, truth),
    auc: rocAuc(logits, truth),
    balancedAccuracy: balancedAccuracy(
      Uint8Array.from(probabilities, (p) => (p >= 0.5 ? 1 : 0)),
      truth,
    ),
  }));
  const meanOfKnown = (values: (number | null)[]) => {
    const known = values.filter((value) => value !== null);
    return known.length === 0 ? null : mean(known);
  };
  return {
    logLoss: meanOfKnown(each.map((one) => one.logLoss)) ?? NaN,
    auc: meanOfKnown(each.map((one) => one.auc)),
    balancedAccuracy: meanOfKnown(each.map((one) => one.balancedAccuracy)),
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
