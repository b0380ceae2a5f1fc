/** Split conformal prediction: a set of answers with a promised rate of holding the true one. */

/** Keeps a product such as 20 * 0.95 from being rounded up past a whole number. */
const RANK_GUARD = 1e-12;

/**
 * Rank of the calibration score that serves as cut-off, k = ceil((n + 1)(1 - alpha)).
 *
 * @param count - calibration scores, whole, >= 0
 * @param alpha - accepted rate of sets that leave out the truth, strictly between 0 and 1
 * @returns k, 1..n+1; k = n + 1 means that nothing can be left out
 * @throws {RangeError} if an argument is out of range
 * @see Vovk, Gammerman and Shafer, Algorithmic Learning in a Random World (2005); Angelopoulos and Bates,
 *   arXiv 2107.07511, section 1
 */
export function conformalRank(count: number, alpha: number): number {
  if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`count must be whole, got ${count}`);
  checkAlpha(alpha);
  return Math.max(1, Math.ceil((count + 1) * (1 - alpha) - RANK_GUARD));
}

/** Least number of calibration scores with which a set can leave anything out at `alpha`: 19 at 0.05. */
export function leastCalibrationCount(alpha: number): number {
  checkAlpha(alpha);
  return Math.max(1, Math.ceil(1 / alpha - 1 - RANK_GUARD / alpha));
}

/**
 * The cut-off: a label whose score is above it leaves the set.
 *
 * @param calibrationScores - strangeness of held-out examples under their true label; larger is stranger
 * @param alpha - accepted rate of sets that leave out the truth, strictly between 0 and 1
 * @returns the k-th smallest score, or Infinity if k > n
 * @throws {RangeError} if `alpha` is out of range or a score is not a number
 */
export function conformalThreshold(calibrationScores: ArrayLike<number>, alpha: number): number {
  checkScores(calibrationScores);
  const rank = conformalRank(calibrationScores.length, alpha);
  if (rank > calibrationScores.length) return Infinity;
  return Float64Array.from(calibrationScores).sort()[rank - 1]!;
}

/**
 * Conformal p-value: how usual a score is among the calibration scores.
 *
 * @param calibrationScores - shape [n], n >= 0; larger is stranger
 * @param score - strangeness of the new example under the label in question
 * @returns (1 + number of calibration scores >= score) / (n + 1), so never 0, and 1 if n = 0
 * @throws {RangeError} if a score is not a number
 */
export function conformalPValue(calibrationScores: ArrayLike<number>, score: number): number {
  checkScores(calibrationScores);
  checkScores([score]);
  let asStrange = 0;
  for (let i = 0; i < calibrationScores.length; i += 1) if (calibrationScores[i]! >= score) asStrange += 1;
  return (1 + asStrange) / (calibrationScores.length + 1);
}

/**
 * Mondrian (label by label) p-values, so that the promise holds for each label and not only on average.
 *
 * @param calibrationScores - for each label, the scores of held-out examples that truly had it
 * @param scores - for each label, the strangeness of the new example if it had that label
 * @throws {RangeError} if a label has no score
 * @see Vovk, Gammerman and Shafer (2005), section 4.5
 */
export function mondrianPValues<Label extends string>(
  calibrationScores: Readonly<Record<Label, ArrayLike<number>>>,
  scores: Readonly<Record<Label, number>>,
): Record<Label, number> {
  const labels = Object.keys(calibrationScores) as Label[];
  const pairs = labels.map((label) => [
    label,
    conformalPValue(calibrationScores[label], scores[label] ?? NaN),
  ]);
  return Object.fromEntries(pairs) as Record<Label, number>;
}

/**
 * Labels that cannot be left out at `alpha`: those with a p-value above it.
 *
 * @returns the labels in the order of the record; empty if the example is strange under each
 * @throws {RangeError} if `alpha` is out of range
 */
export function conformalSet<Label extends string>(
  pValues: Readonly<Record<Label, number>>,
  alpha: number,
): Label[] {
  checkAlpha(alpha);
  return (Object.keys(pValues) as Label[]).filter((label) => pValues[label] > alpha + RANK_GUARD);
}

/** A hole among the scores would count as an example and never as a strange one: p-values would come out too low. */
function checkScores(scores: ArrayLike<number>): void {
  for (let i = 0; i < scores.length; i += 1)
    if (Number.isNaN(scores[i])) throw new RangeError("a strangeness score must be a number");
}

function checkAlpha(alpha: number): void {
  if (!(alpha > 0 && alpha < 1)) throw new RangeError(`alpha must lie between 0 and 1, got ${alpha}`);
}
