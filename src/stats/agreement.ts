/** Two judges of the same plates: how far they agree, and which of two noses errs less. */
import { binomialCdf } from "./binomial.js";
import { chiSquaredUpperTail } from "./chiSquared.js";
import type { Interval } from "./interval.js";
import { normalQuantile } from "./normal.js";

/** Cohen's kappa with its parts, all fractions (kappa may be negative). */
export interface Kappa {
  /** Share of cases on which both judges say the same. */
  readonly observed: number;
  /** Share expected if they judged independently. */
  readonly expected: number;
  /** (observed - expected) / (1 - expected); null if both judges always gave one and the same label. */
  readonly kappa: number | null;
}

/**
 * Cohen's kappa of a square table.
 *
 * @param table - counts or shares, >= 0, at [first judge's label][second judge's label]
 * @throws {RangeError} if the table is empty, not square, negative or adds up to nothing
 * @see Cohen, Educational and Psychological Measurement 20 (1960), 37-46
 */
export function cohenKappa(table: readonly ArrayLike<number>[]): Kappa {
  const size = table.length;
  const rowSums = new Float64Array(size);
  const columnSums = new Float64Array(size);
  let diagonal = 0;
  table.forEach((row, i) => {
    if (row.length !== size) throw new RangeError("an agreement table is square");
    for (let j = 0; j < size; j += 1) {
      const cell = row[j]!;
      if (!(cell >= 0)) throw new RangeError(`a count is zero or more, got ${cell}`);
      rowSums[i]! += cell;
      columnSums[j]! += cell;
      if (i === j) diagonal += cell;
    }
  });
  const total = rowSums.reduce((a, b) => a + b, 0);
  if (!(total > 0)) throw new RangeError("an agreement table needs a case");
  const observed = diagonal / total;
  const expected = rowSums.reduce((sum, row, i) => sum + row * columnSums[i]!, 0) / total ** 2;
  return { observed, expected, kappa: expected < 1 ? (observed - expected) / (1 - expected) : null };
}

/** McNemar's test of two judges on the same cases. */
export interface McNemar {
  /** (b - c)^2 / (b + c), one degree of freedom. */
  readonly chiSquared: number;
  /** With Edwards' continuity correction, (|b - c| - 1)^2 / (b + c). */
  readonly correctedChiSquared: number;
  /** p-value of the corrected statistic. */
  readonly correctedP: number;
  /** Exact two-sided binomial p-value; the one to use for small counts. */
  readonly exactP: number;
}

/**
 * McNemar's test from the two kinds of disagreement. Without any, the judges cannot be told apart: p = 1.
 *
 * @param onlyFirst - cases that only the first judge got right, whole, >= 0
 * @param onlySecond - cases that only the second judge got right, whole, >= 0
 * @throws {RangeError} if a count is negative or not whole
 * @see McNemar, Psychometrika 12 (1947), 153-157; Edwards, Psychometrika 13 (1948), 185-187
 */
export function mcNemar(onlyFirst: number, onlySecond: number): McNemar {
  checkCount(onlyFirst);
  checkCount(onlySecond);
  const total = onlyFirst + onlySecond;
  if (total === 0) return { chiSquared: 0, correctedChiSquared: 0, correctedP: 1, exactP: 1 };
  const distance = Math.abs(onlyFirst - onlySecond);
  // An equal split has nothing to correct; without the guard the correction would invent a difference.
  const correctedChiSquared = Math.max(0, distance - 1) ** 2 / total;
  return {
    chiSquared: distance ** 2 / total,
    correctedChiSquared,
    correctedP: chiSquaredUpperTail(correctedChiSquared, 1),
    exactP: Math.min(1, 2 * binomialCdf(Math.min(onlyFirst, onlySecond), total, 0.5)),
  };
}

/**
 * Difference of two detection rates on the same plates, with its normal interval (the dPOD of paired studies).
 *
 * @param onlyFirst - plates that only the first detected, whole, >= 0
 * @param onlySecond - plates that only the second detected, whole, >= 0
 * @param plates - all plates judged by both, whole, >= 1
 * @param confidence - fraction strictly between 0 and 1
 * @returns difference first minus second, -1..1, and interval cut to that range
 * @throws {RangeError} if a count or the confidence is out of range
 * @see AOAC Official Methods of Analysis (2012), Appendices H and J
 */
export function pairedDifference(
  onlyFirst: number,
  onlySecond: number,
  plates: number,
  confidence = 0.95,
): { readonly difference: number; readonly interval: Interval } {
  [onlyFirst, onlySecond, plates].forEach(checkCount);
  if (plates < 1 || onlyFirst + onlySecond > plates)
    throw new RangeError(`${onlyFirst} + ${onlySecond} disagreements do not fit ${plates} plates`);
  if (!(confidence > 0 && confidence < 1)) throw new RangeError(`confidence must lie between 0 and 1`);
  const gap = onlyFirst - onlySecond;
  const difference = gap / plates;
  const error = Math.sqrt((onlyFirst + onlySecond) / plates ** 2 - gap ** 2 / plates ** 3);
  const half = normalQuantile((1 + confidence) / 2) * error;
  return {
    difference,
    interval: { low: Math.max(-1, difference - half), high: Math.min(1, difference + half) },
  };
}

function checkCount(count: number): void {
  if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`a count is whole, got ${count}`);
}
