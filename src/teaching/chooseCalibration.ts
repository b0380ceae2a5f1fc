import { calibrate } from "../nose/calibrate.js";
import type { Calibration } from "../nose/nose.js";
import { fitTemperature, isotonicRegression } from "../stats/calibration.js";
import { fitPulledPlatt } from "../stats/pulledPlatt.js";
import { logLoss } from "../stats/scores.js";

/** Isotonic steps need this many plates of either truth; with fewer they learn the noise. Common practice. */
const ISOTONIC_PLATES = 50;
/** A map of a group's own has two parameters, and needs ten plates of either truth for each.
 * Peduzzi and others, J. Clinical Epidemiology 49 (1996), 1373-1379. */
const OWN_PLATES = 20;
/** The shared temperature must beat doing nothing by this much log loss, summed over all cases: Akaike's price of one
 * parameter. Akaike, IEEE Trans. Automatic Control 19 (1974), 716-723. */
const LEAST_GAIN = 1;
/** Pull of a map to doing nothing, in sniffs: with few plates a free map forgets what the models know. */
const PULL = 10;
/** The same of a map of one group's own: it has fewer plates to learn from, and a wrong one mixes up the order. */
const OWN_PULL = 100;
const LEAST_TEMPERATURE = 0.2;

/** Held-out cases of one group at one horizon. */
export interface CalibrationCases {
  readonly logits: Float64Array;
  /** 1 or 0. */
  readonly truth: Uint8Array;
  readonly folds: Int32Array;
  /** How much each case counts, so that a plate counts once. */
  readonly weight: Float64Array;
  /** Plates of the rarer truth. */
  readonly scarcerPlates: number;
  /** Probabilities keep this distance from 0 and 1. */
  readonly margin: number;
}

/** The calibration in use, and what each case gets from one fitted without its own fold. */
export interface ChosenCalibration {
  readonly calibration: Calibration;
  readonly probabilities: Float32Array;
}

/** Kinds that are fitted to one group alone; the temperature is shared. */
type Kind = Exclude<Calibration["kind"], "temperature">;
const OWN_KINDS: readonly { readonly kind: Kind; readonly plates: number }[] = [
  { kind: "platt", plates: OWN_PLATES },
  { kind: "isotonic", plates: ISOTONIC_PLATES },
];

/**
 * Picks the calibration of each group with the least cross-fitted log loss; the plainer one wins near ties.
 *
 * All groups come from the same models, sure or unsure alike: so they share a temperature, fitted on all their plates
 * together, and a group has a map of its own only where that is clearly better.
 *
 * @returns one for each group, in the same order
 */
export function chooseCalibrations(groups: readonly CalibrationCases[]): ChosenCalibration[] {
  const shared = sharedTemperature(groups);
  const nothing = groups.map((cases) => tried(cases, "identity"));
  const sum = (each: readonly Tried[]) => each.reduce((all, { loss }) => all + loss, 0);
  const gains = sum(shared) + LEAST_GAIN < sum(nothing);
  return groups.map((cases, group) => {
    const plain = gains ? shared[group]! : nothing[group]!;
    const own = OWN_KINDS.filter(({ plates }) => cases.scarcerPlates >= plates);
    const price = ownPrice(cases);
    let best = plain;
    for (const { kind } of own) {
      const one = tried(cases, kind);
      if (one.loss + price < best.loss) best = { ...one, loss: one.loss + price };
    }
    return { calibration: best.calibration, probabilities: best.probabilities };
  });
}

/** What a map of two parameters must gain: half of their number times the log of the cases.
 * Schwarz, Annals of Statistics 6 (1978), 461-464. */
function ownPrice({ truth }: CalibrationCases): number {
  return Math.log(truth.length);
}

interface Tried extends ChosenCalibration {
  /** Log loss, summed over the cases. */
  readonly loss: number;
}

/** One temperature for all groups: what each gets from it, in the same order. */
export function sharedTemperature(groups: readonly CalibrationCases[]): readonly Tried[] {
  const known = new Map<number, Calibration>();
  const fittedWithout = (fold: number) => {
    const fitted = known.get(fold) ?? temperatureWithout(groups, fold);
    known.set(fold, fitted);
    return fitted;
  };
  const whole = temperatureWithout(groups, null);
  return groups.map((cases) => scored(cases, fittedWithout, whole));
}

/** The temperature of all cases but those of one fold; of all where none is left out. */
function temperatureWithout(groups: readonly CalibrationCases[], left: number | null): Calibration {
  const most = groups.reduce((sum, { logits }) => sum + logits.length, 0);
  const logits = new Float64Array(most);
  const truth = new Uint8Array(most);
  const weight = new Float64Array(most);
  const margin = new Float64Array(most);
  let count = 0;
  // Plain loops: choosing a mixture comes here hundreds of times.
  for (const cases of groups)
    for (let row = 0; row < cases.logits.length; row += 1) {
      if (cases.folds[row] === left) continue;
      logits[count] = cases.logits[row]!;
      truth[count] = cases.truth[row]!;
      weight[count] = cases.weight[row]!;
      margin[count] = cases.margin;
      count += 1;
    }
  if (count === 0) return { kind: "identity" };
  const options = { weight: weight.subarray(0, count), margin: margin.subarray(0, count), pull: PULL };
  const temperature = fitTemperature(logits.subarray(0, count), truth.subarray(0, count), options);
  return { kind: "temperature", temperature: Math.fround(Math.max(LEAST_TEMPERATURE, temperature)) };
}

function tried(cases: CalibrationCases, kind: Kind): Tried {
  const fit = (rows: readonly number[]) =>
    fitCalibration(
      Float64Array.from(rows, (i) => cases.logits[i]!),
      Uint8Array.from(rows, (i) => cases.truth[i]!),
      kind,
    );
  const fittedWithout = (fold: number) => fit(rowsWhere(cases.folds, (own) => own !== fold));
  return scored(cases, fittedWithout, fit([...cases.logits.keys()]));
}

/** Cross-fitted probabilities and their loss; `whole` is kept for use. */
function scored(
  cases: CalibrationCases,
  fittedWithout: (fold: number) => Calibration,
  whole: Calibration,
): Tried {
  const probabilities = new Float32Array(cases.logits.length);
  for (const fold of new Set(cases.folds)) {
    const fitted = fittedWithout(fold);
    for (const i of rowsWhere(cases.folds, (own) => own === fold))
      probabilities[i] = calibrate(fitted, cases.logits[i]!, cases.margin);
  }
  const loss = logLoss(probabilities, cases.truth) * cases.truth.length;
  return { calibration: whole, probabilities, loss };
}

function rowsWhere(folds: Int32Array, isWanted: (fold: number) => boolean): number[] {
  return [...folds.keys()].filter((i) => isWanted(folds[i]!));
}

/** Fits one kind of calibration to one group alone; shapes [n]. */
export function fitCalibration(logits: Float64Array, truth: Uint8Array, kind: Kind): Calibration {
  if (kind === "identity" || logits.length === 0) return { kind: "identity" };
  if (kind === "platt") {
    const map = fitPulledPlatt(logits, truth, OWN_PULL);
    // A falling map would turn the order of the held-out scores round: then the scores know nothing.
    return { kind, slope: Math.fround(Math.max(0, map.slope)), intercept: Math.fround(map.intercept) };
  }
  return isotonic(logits, truth);
}

function isotonic(logits: Float64Array, truth: Uint8Array): Calibration {
  const order = [...logits.keys()].sort((a, b) => logits[a]! - logits[b]!);
  const fitted = isotonicRegression(order.map((i) => truth[i]!));
  return {
    kind: "isotonic",
    logits: Float32Array.from(order, (i) => logits[i]!),
    probabilities: Float32Array.from(fitted),
  };
}
