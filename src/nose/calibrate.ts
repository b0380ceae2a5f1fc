import { sigmoid, withinMargin } from "../stats/logistic.js";
import type { Calibration } from "./nose.js";

/**
 * Probability of *present* under a calibration.
 *
 * @param margin - the probability keeps this distance from 0 and 1, 0 to 0.5
 */
export function calibrate(calibration: Calibration, logit: number, margin: number): number {
  return withinMargin(plainProbability(calibration, logit), margin);
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
