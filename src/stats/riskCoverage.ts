import { checkOutcomes } from "./checkPairs.js";

/** What is bought by answering less: one point for each confidence at which the answers may be cut off. */
export interface RiskCoveragePoint {
  /** Answers with at least this confidence are given. */
  readonly leastConfidence: number;
  /** Share of all cases that are answered, fraction, above 0. */
  readonly coverage: number;
  /** Share of the answered cases that are wrong, fraction. */
  readonly risk: number;
}

/**
 * Risk-coverage curve of a chooser that may abstain.
 *
 * @param confidence - shape [n], larger means surer; any scale
 * @param wrong - shape [n], 1 if the answer was wrong, else 0
 * @returns one point a distinct confidence, surest first; the last has coverage 1
 * @throws {RangeError} if n = 0, the lengths differ, a confidence is no number or `wrong` is neither 0 nor 1
 * @see El-Yaniv and Wiener, J. Machine Learning Research 11 (2010), 1605-1641
 */
export function riskCoverage(confidence: ArrayLike<number>, wrong: ArrayLike<number>): RiskCoveragePoint[] {
  checkOutcomes(confidence, wrong);
  const cases = Array.from(confidence, (sureness, at) => ({ sureness, wrong: wrong[at]! }));
  if (cases.some(({ sureness }) => Number.isNaN(sureness)))
    throw new RangeError("a confidence must be a number");
  cases.sort((a, b) => b.sureness - a.sureness);
  const points: RiskCoveragePoint[] = [];
  let errors = 0;
  cases.forEach((one, at) => {
    errors += one.wrong;
    const answered = at + 1;
    if (cases[answered]?.sureness === one.sureness) return;
    points.push({
      leastConfidence: one.sureness,
      coverage: answered / cases.length,
      risk: errors / answered,
    });
  });
  return points;
}

/** Mean risk over the coverage steps, weighted by the cases each step adds; smaller is better. */
export function areaUnderRiskCoverage(points: readonly RiskCoveragePoint[]): number {
  let before = 0;
  let area = 0;
  for (const { coverage, risk } of points) {
    area += (coverage - before) * risk;
    before = coverage;
  }
  return area;
}
