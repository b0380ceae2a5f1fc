/** Two-by-two tables: Fisher's exact test and the odds ratio. */
import { logGamma } from "./gamma.js";
import type { Interval } from "./interval.js";
import { normalQuantile } from "./normal.js";

/** Counts, whole, >= 0: rows are the groups, columns the outcomes. */
export type TwoByTwo = readonly [readonly [number, number], readonly [number, number]];

/** Tables as likely as the one seen, but for rounding, count with it; the same tolerance as R's fisher.test. */
const TIE_TOLERANCE = 1e-7;

/** p-values of Fisher's exact test. */
export interface FisherExact {
  /** Sum over all tables with the same margins that are no likelier than the one seen. */
  readonly twoSided: number;
  /** Chance of a first cell this small or smaller (odds ratio below 1). */
  readonly less: number;
  /** Chance of a first cell this large or larger (odds ratio above 1). */
  readonly greater: number;
}

/**
 * Fisher's exact test that rows and columns are independent.
 *
 * @throws {RangeError} if a count is negative or not whole
 * @see Fisher, J. Royal Statistical Society 98 (1935), 39-82; two-sided by small probabilities as in R's fisher.test
 */
export function fisherExact(table: TwoByTwo): FisherExact {
  const [[a, b], [c, d]] = checked(table);
  const least = Math.max(0, a - d);
  const most = Math.min(a + b, a + c);
  const chances = Array.from({ length: most - least + 1 }, (_, i) =>
    firstCellChance(least + i, a + b, c + d, a + c),
  );
  const seen = chances[a - least]!;
  const sum = (some: readonly number[]) =>
    Math.min(
      1,
      some.reduce((total, one) => total + one, 0),
    );
  return {
    twoSided: sum(chances.filter((chance) => chance <= seen * (1 + TIE_TOLERANCE))),
    less: sum(chances.slice(0, a - least + 1)),
    greater: sum(chances.slice(a - least)),
  };
}

/** Sample odds ratio ad / bc; Infinity if only the lower product is 0, null if both are. */
export function oddsRatio(table: TwoByTwo): number | null {
  const [[a, b], [c, d]] = checked(table);
  if (a * d === 0 && b * c === 0) return null;
  return (a * d) / (b * c);
}

/**
 * Woolf's interval for the odds ratio. If a cell is empty, one half is added to each (Haldane and Anscombe).
 *
 * @param confidence - fraction strictly between 0 and 1
 * @throws {RangeError} if a count is negative or not whole, or the confidence is out of range
 * @see Woolf, Annals of Human Genetics 19 (1955), 251-253; Haldane, same journal 20 (1956), 309-311
 */
export function oddsRatioInterval(table: TwoByTwo, confidence = 0.95): Interval {
  if (!(confidence > 0 && confidence < 1)) throw new RangeError("confidence must lie between 0 and 1");
  const cells = checked(table).flat();
  const [a, b, c, d] = cells.map((cell) => (cells.includes(0) ? cell + 0.5 : cell)) as [
    number,
    number,
    number,
    number,
  ];
  const half = normalQuantile((1 + confidence) / 2) * Math.sqrt(1 / a + 1 / b + 1 / c + 1 / d);
  const middle = Math.log((a * d) / (b * c));
  return { low: Math.exp(middle - half), high: Math.exp(middle + half) };
}

/** Hypergeometric chance of the first cell, given both row sums and the first column's sum. */
function firstCellChance(cell: number, firstRow: number, secondRow: number, firstColumn: number): number {
  return Math.exp(
    logChoose(firstRow, cell) +
      logChoose(secondRow, firstColumn - cell) -
      logChoose(firstRow + secondRow, firstColumn),
  );
}

function logChoose(all: number, chosen: number): number {
  return logGamma(all + 1) - logGamma(chosen + 1) - logGamma(all - chosen + 1);
}

function checked(table: TwoByTwo): TwoByTwo {
  for (const count of table.flat())
    if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`a count is whole, got ${count}`);
  return table;
}
