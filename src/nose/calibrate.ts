import { sigmoid, withinMargin } from "../stats/logistic.js";
import type { Calibration, Nose } from "./nose.js";

/** Keeps a probability from 0 and 1 by a margin. */
export type DrawIn = (probability: number, margin: number) => number;

/**
 * Probability of *present* under a calibration.
 *
 * @param margin - the probability keeps this distance from 0 and 1, 0 to 0.5
 * @param drawIn - how it keeps it; see {@link drawInOf}
 */
export function calibrate(
  calibration: Calibration,
  logit: number,
  margin: number,
  drawIn: DrawIn = withinMargin,
): number {
  return drawIn(plainProbability(calibration, logit), margin);
}

/** How the probabilities of a nose keep their margin: as it was calibrated. */
export function drawInOf({ marginAtEnds }: Pick<Nose, "marginAtEnds">): DrawIn {
  return marginAtEnds === true ? withinMargin : squeezed;
}

/** The whole range made narrower, so that the middle moves too: what older noses were calibrated with. */
function squeezed(probability: number, margin: number): number {
  return margin + (1 - 2 * margin) * probability;
}

/**
 * How often at least a nose must be expected to slip that was never seen to, on so many held-out plates.
 *
 * @see Krichevsky and Trofimov, IEEE Trans. Information Theory 27 (1981), 199-207: half an event among one trial more
 */
export function slipRate(plates: number): number {
  return Math.fround(0.5 / (plates + 1));
}

function plainProbability(calibration: Calibration, logit: number): number {
  switch (calibration.kind) {
    case "identity":
      return sigmoid(logit);
    case "temperature":
      return sigmoid(logit / calibration.temperature);
    case "platt":
      return sigmoid(calibration.slope * logit + calibration.intercept);
    case "isotonic":
      return interpolated(calibration.logits, calibration.probabilities, logit);
  }
}

/** Straight lines between the knots, flat beyond them. */
function interpolated(knots: Float32Array, values: Float32Array, at: number): number {
  let low = 0;
  let high = knots.length - 1;
  if (at <= knots[low]!) return values[low]!;
  if (at >= knots[high]!) return values[high]!;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (knots[middle]! <= at) low = middle;
    else high = middle;
  }
  const span = knots[high]! - knots[low]!;
  const share = span > 0 ? (at - knots[low]!) / span : 1;
  return values[low]! + share * (values[high]! - values[low]!);
}
