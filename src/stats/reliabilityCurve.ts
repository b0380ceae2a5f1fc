import { checkProbabilities } from "./checkPairs.js";

/** One non-empty bin of a reliability curve. */
export interface ReliabilityBin {
  /** Mean predicted probability of the bin, fraction. */
  readonly meanPredicted: number;
  /** Share of the bin's predictions that came true, fraction. */
  readonly observedFraction: number;
  /** Predictions in the bin, whole, >= 1. */
  readonly count: number;
}

/** Keeps 0.07 * 100 = 7.000000000000001 from landing in the bin above. */
const EDGE_GUARD = 1e-12;

/**
 * Reliability curve: of the sniffs we called "70 %", did about 70 % turn out right?
 *
 * @param predicted - calibrated probabilities, shape [n], fractions 0..1 (never per cent)
 * @param happened - outcomes, shape [n], 1 if the prediction came true, else 0
 * @param binCount - equal-width bins, whole, >= 1; bin b covers (b/binCount, (b+1)/binCount]
 * @returns the non-empty bins, low to high, so at most `binCount` of them
 * @throws {RangeError} if n = 0, the lengths differ, `binCount` is bad, or a value is out of range
 * @see Niculescu-Mizil and Caruana, Proc. 22nd ICML (2005), section 4. Exactly 0 joins the first bin.
 */
export function reliabilityCurve(
  predicted: ArrayLike<number>,
  happened: ArrayLike<number>,
  binCount: number,
): ReliabilityBin[] {
  checkProbabilities(predicted, happened);
  if (!Number.isSafeInteger(binCount) || binCount < 1)
    throw new RangeError(`binCount must be a whole number of bins, got ${binCount}`);
  const sums = Array.from({ length: binCount }, () => ({ predicted: 0, happened: 0, count: 0 }));
  for (let i = 0; i < predicted.length; i += 1) {
    const bin = sums[Math.max(0, Math.ceil(predicted[i]! * binCount - EDGE_GUARD) - 1)]!;
    bin.predicted += predicted[i]!;
    bin.happened += happened[i]!;
    bin.count += 1;
  }
  return sums
    .filter((bin) => bin.count > 0)
    .map(({ predicted: sum, happened: hits, count }) => ({
      meanPredicted: sum / count,
      observedFraction: hits / count,
      count,
    }));
}
