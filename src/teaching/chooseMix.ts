import { MODEL_KINDS, type ModelKind } from "../nose/models.js";
import { sigmoid } from "../stats/logistic.js";
import { balancedAccuracy, logLoss, rocAuc } from "../stats/scores.js";
import type { RivalReport } from "../nose/report.js";
import { chooseCalibration } from "./chooseCalibration.js";
import { fitMix, mixedLogits, type MixCases } from "./fitMix.js";
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

/** A model that carries less than this share of the mixture is left out: it would cost more room than it is worth. */
const LEAST_SHARE = 0.15;

/** A way to turn the models' log-odds into one. */
export interface MixChoice {
  readonly chosen: ModelKind | "mix";
  /** Models in use. */
  readonly kinds: readonly ModelKind[];
  readonly rivals: readonly RivalReport[];
}

/** The best of several single models is partly the luckiest: the mixture is preferred unless it is worse by this share
 * of the log loss. Common practice. */
const LUCK = 0.03;

/**
 * Compares each model alone with the mixture, on cross-fitted and calibrated log loss.
 */
export function chooseMix(heldOut: HeldOutLogits, cases: JudgedCases, hasNets: boolean): MixChoice {
  const kinds = MODEL_KINDS.filter((kind) => hasNets || kind !== "nets");
  const alone = kinds.map((name) => ({
    name,
    ...scoresOf(heldOut.models[MODEL_KINDS.indexOf(name)]!, cases),
  }));
  const mixable = kinds.length < 2 ? kinds : weightyKinds(heldOut, cases, kinds);
  const together = { name: "mix" as const, ...scoresOf(crossMixed(heldOut, cases, mixable), cases) };
  const best = alone.reduce((a, b) => (b.logLoss < a.logLoss ? b : a));
  const mixes = mixable.length > 1 && together.logLoss < best.logLoss * (1 + LUCK);
  return {
    chosen: mixes ? "mix" : best.name,
    kinds: mixes ? mixable : [best.name],
    rivals: [...alone, together],
  };
}

function weightyKinds(
  heldOut: HeldOutLogits,
  cases: JudgedCases,
  kinds: readonly ModelKind[],
): readonly ModelKind[] {
  const weights = wholeMix(heldOut, cases, kinds);
  const sum = weights.reduce((a, b) => a + b, 0);
  return kinds.filter((kind) => weights[MODEL_KINDS.indexOf(kind)]! >= LEAST_SHARE * sum);
}

/** Weights of a mixture of the kinds from all judged cases. */
export function wholeMix(
  heldOut: HeldOutLogits,
  cases: JudgedCases,
  kinds: readonly ModelKind[],
): Float32Array {
  return fitMix(mixCases(heldOut, cases, kinds, () => true));
}

export function oneHot(place: number): Float32Array {
  return Float32Array.from(MODEL_KINDS, (_, i) => (i === place ? 1 : 0));
}

/** Mixed log-odds of each row by weights from the other folds, shape [all rows, groupCount]. */
export function crossMixed(
  heldOut: HeldOutLogits,
  cases: JudgedCases,
  kinds: readonly ModelKind[],
): Float64Array {
  const mixed = new Float64Array(heldOut.models[0]!.length);
  for (const fold of new Set(cases.rows.map((row) => cases.folds[row]!))) {
    const weights = fitMix(mixCases(heldOut, cases, kinds, (row) => cases.folds[row] !== fold));
    const all = mixedLogits(heldOut.models, weights);
    for (const row of cases.rows)
      if (cases.folds[row] === fold)
        for (let group = 0; group < cases.groupCount; group += 1)
          mixed[row * cases.groupCount + group] = all[row * cases.groupCount + group]!;
  }
  return mixed;
}

function mixCases(
  heldOut: HeldOutLogits,
  cases: JudgedCases,
  kinds: readonly ModelKind[],
  wanted: (row: number) => boolean,
): MixCases {
  const places: number[] = [];
  const weight: number[] = [];
  for (const row of cases.rows)
    if (wanted(row))
      for (const group of cases.groups)
        if (cases.truth[row * cases.groupCount + group]! >= 0) {
          places.push(row * cases.groupCount + group);
          weight.push(cases.weight[row]!);
        }
  return {
    logits: heldOut.models.map((model) => Float64Array.from(places, (at) => model[at]!)),
    truth: Float64Array.from(places, (at) => cases.truth[at]!),
    weight: Float64Array.from(weight),
    allowed: MODEL_KINDS.map((kind) => kinds.includes(kind)),
  };
}

/** Mean scores over the groups, each group calibrated without the fold in question. */
function scoresOf(logits: Float64Array, cases: JudgedCases): Omit<RivalReport, "name"> {
  const each = cases.groups.map((group) => {
    const one = groupCases(logits, cases, group);
    const { probabilities } = chooseCalibration(one);
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
    scarcerPlates: Math.min(present, plateCount - present),
    margin: Math.fround(1 / (plateCount + 2)),
  };
}
