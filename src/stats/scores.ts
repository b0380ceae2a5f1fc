/** Scores of probabilities against what happened. */
import { checkOutcomes, checkProbabilities } from "./checkPairs.js";
import { reliabilityCurve } from "./reliabilityCurve.js";

export { type BrierParts, brierDecomposition } from "./brierDecomposition.js";
export { type ReliabilityBin, reliabilityCurve } from "./reliabilityCurve.js";
export { areaUnderRiskCoverage, type RiskCoveragePoint, riskCoverage } from "./riskCoverage.js";
export { rocAuc } from "./rocAuc.js";

/** A probability of exactly 0 or 1 is taken as this far from it, lest one miss cost an infinite loss. */
export const LOG_LOSS_CLIP = 1e-15;

/**
 * Mean log loss (cross-entropy) in nats.
 *
 * @param predicted - probabilities of the event, shape [n], fractions; clipped at {@link LOG_LOSS_CLIP}
 * @param happened - outcomes, shape [n], 0 or 1
 * @throws {RangeError} if n = 0, the lengths differ or a value is out of range
 * @see Good, J. Royal Statistical Society B 14 (1952), 107-114
 */
export function logLoss(predicted: ArrayLike<number>, happened: ArrayLike<number>): number {
  checkProbabilities(predicted, happened);
  let sum = 0;
  for (let i = 0; i < predicted.length; i += 1) {
    const p = Math.min(1 - LOG_LOSS_CLIP, Math.max(LOG_LOSS_CLIP, predicted[i]!));
    sum -= happened[i] === 1 ? Math.log(p) : Math.log1p(-p);
  }
  return sum / predicted.length;
}

/**
 * Brier score: mean squared difference of probability and outcome, 0 (best) to 1.
 *
 * @throws {RangeError} if n = 0, the lengths differ or a value is out of range
 * @see Brier, Monthly Weather Review 78 (1950), 1-3 (in its one-event form)
 */
export function brierScore(predicted: ArrayLike<number>, happened: ArrayLike<number>): number {
  checkProbabilities(predicted, happened);
  let sum = 0;
  for (let i = 0; i < predicted.length; i += 1) sum += (predicted[i]! - happened[i]!) ** 2;
  return sum / predicted.length;
}

/**
 * Expected calibration error: mean distance of the observed share from the mean prediction, bins (lo, hi] of equal
 * width, weighted by their counts. Takes the probability of *present* with whether it was, or (see
 * {@link toConfidence}) the confidence in the answer with whether it was correct.
 *
 * @param predicted - shape [n], fractions
 * @param happened - shape [n], 0 or 1
 * @param binCount - whole, >= 1
 * @throws {RangeError} as {@link reliabilityCurve}
 * @see Naeini, Cooper and Hauskrecht, Proc. AAAI (2015), 2901-2907
 */
export function expectedCalibrationError(
  predicted: ArrayLike<number>,
  happened: ArrayLike<number>,
  binCount = 10,
): number {
  const gaps = reliabilityCurve(predicted, happened, binCount).map(
    (bin) => bin.count * Math.abs(bin.meanPredicted - bin.observedFraction),
  );
  return gaps.reduce((a, b) => a + b, 0) / predicted.length;
}

/** Largest distance in any bin; arguments and source as {@link expectedCalibrationError}. */
export function maximumCalibrationError(
  predicted: ArrayLike<number>,
  happened: ArrayLike<number>,
  binCount = 10,
): number {
  const bins = reliabilityCurve(predicted, happened, binCount);
  return Math.max(...bins.map((bin) => Math.abs(bin.meanPredicted - bin.observedFraction)));
}

/**
 * Turns probabilities of *present* into confidence in the likelier answer, and whether that answer was correct.
 * At exactly one half the answer is *present*.
 *
 * @throws {RangeError} if n = 0, the lengths differ or a value is out of range
 */
export function toConfidence(
  predicted: ArrayLike<number>,
  happened: ArrayLike<number>,
): { readonly confidence: Float64Array; readonly correct: Uint8Array } {
  checkProbabilities(predicted, happened);
  return {
    confidence: Float64Array.from(predicted, (p) => Math.max(p, 1 - p)),
    correct: Uint8Array.from(predicted, (p, at) => (p >= 0.5 === (happened[at] === 1) ? 1 : 0)),
  };
}

/**
 * Balanced accuracy: mean of sensitivity and specificity.
 *
 * @param answered - shape [n], 1 if answered *present*, else 0
 * @param happened - shape [n], 1 if present, else 0
 * @returns a fraction, or null if only one kind of outcome is there
 * @throws {RangeError} if n = 0, the lengths differ, or a value is neither 0 nor 1
 * @see Brodersen and others, Proc. 20th ICPR (2010), 3121-3124
 */
export function balancedAccuracy(answered: ArrayLike<number>, happened: ArrayLike<number>): number | null {
  checkOutcomes(answered, happened);
  checkOutcomes(happened, answered);
  const right = [0, 0];
  const all = [0, 0];
  for (let i = 0; i < answered.length; i += 1) {
    const kind = happened[i]!;
    all[kind]! += 1;
    if (answered[i] === kind) right[kind]! += 1;
  }
  if (all[0] === 0 || all[1] === 0) return null;
  return (right[0]! / all[0]! + right[1]! / all[1]!) / 2;
}
