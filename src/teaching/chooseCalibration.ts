import { calibrate } from "../nose/calibrate.js";
import type { Calibration } from "../nose/nose.js";
import { fitTemperature, isotonicRegression } from "../stats/calibration.js";
import { fitPulledPlatt } from "../stats/pulledPlatt.js";
import { logLoss } from "../stats/scores.js";

/** Isotonic steps need this many plates of either truth; with fewer they learn the noise. Common practice. */
const ISOTONIC_PLATES = 50;
/** A calibration must beat doing nothing by this much log loss, summed over all cases, to be worth its risk: half of
 * Akaike's price of two parameters. Akaike, IEEE Trans. Automatic Control 19 (1974), 716-723. */
const LEAST_GAIN = 1;
/** Pull of Platt's map to doing nothing, in sniffs: with few plates a free map forgets what the models know. */
const PLATT_PULL = 20;

/** Held-out cases of one group at one horizon. */
export interface CalibrationCases {
  readonly logits: Float64Array;
  /** 1 or 0. */
  readonly truth: Uint8Array;
  readonly folds: Int32Array;
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

type Kind = Calibration["kind"];

/** Picks the calibration with the least cross-fitted log loss; doing nothing is one of them and wins near ties. */
export function chooseCalibration(cases: CalibrationCases): ChosenCalibration {
  const kinds: Kind[] = ["identity", "temperature", "platt"];
  if (cases.scarcerPlates >= ISOTONIC_PLATES) kinds.push("isotonic");
  let best: { kind: Kind; loss: number; probabilities: Float32Array } | undefined;
  for (const kind of kinds) {
    const probabilities = crossFitted(cases, kind);
    const loss = logLoss(probabilities, cases.truth) * cases.truth.length;
    const price = kind === "identity" ? 0 : LEAST_GAIN;
    if (best === undefined || loss + price < best.loss)
      best = { kind, loss: kind === "identity" ? loss : loss + price, probabilities };
  }
  const chosen = best!;
  return {
    calibration: fitCalibration(cases.logits, cases.truth, chosen.kind),
    probabilities: chosen.probabilities,
  };
}

function crossFitted(cases: CalibrationCases, kind: Kind): Float32Array {
  const probabilities = new Float32Array(cases.logits.length);
  for (const fold of new Set(cases.folds)) {
    const others = [...cases.folds.keys()].filter((i) => cases.folds[i] !== fold);
    const fitted = fitCalibration(
      Float64Array.from(others, (i) => cases.logits[i]!),
      Uint8Array.from(others, (i) => cases.truth[i]!),
      kind,
    );
    cases.folds.forEach((own, i) => {
      if (own === fold) probabilities[i] = calibrate(fitted, cases.logits[i]!, cases.margin);
    });
  }
  return probabilities;
}

/** Fits one kind of calibration; shapes [n]. */
export function fitCalibration(logits: Float64Array, truth: Uint8Array, kind: Kind): Calibration {
  if (kind === "identity" || logits.length === 0) return { kind: "identity" };
  if (kind === "temperature")
    return { kind, temperature: Math.fround(Math.max(0.2, fitTemperature(logits, truth))) };
  if (kind === "platt") {
    const map = fitPulledPlatt(logits, truth, PLATT_PULL);
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
