import { transpose } from "../stats/linearAlgebra.js";
import { countingRows, type Table } from "./table.js";

/** Additions saved, a pattern, from which it pays to sum up by pattern first. */
const SAVED_ADDITIONS = 3;

/** Some of the groups: as many as are counted, at the beginning of a list that is used again and again. */
export interface SomeGroups {
  readonly groups: Int32Array;
  count: number;
}

/** A table as trees read it: rows that are parted in place, values feature by feature, truths as patterns. */
export interface Ground {
  readonly features: number;
  readonly groups: number;
  /** Numbers of the rows that count; those of a node lie side by side. */
  readonly order: Int32Array;
  /** Weighted counts of some rows: absent and present of each group, unknown truths left out, into shape [groups, 2]. */
  countRows(from: number, upto: number, into: Float64Array): void;
  /** Reads a feature of some rows, for `countBelow`, and tells its least and its greatest value. */
  readValues(from: number, upto: number, feature: number, range: { low: number; high: number }): void;
  /**
   * Counts those of the rows just read that lie at or below a threshold, for some groups: the counts of the others stay
   * as they were.
   *
   * @returns how many rows they are
   */
  countBelow(from: number, upto: number, threshold: number, some: SomeGroups, into: Float64Array): number;
  /** Puts the rows at or below a threshold before the others. @returns the place of the first of the others */
  partRows(from: number, upto: number, feature: number, threshold: number): number;
}

/**
 * Makes the ground for trees on one table. Rows with the same truths share a pattern: weights are summed up by
 * pattern first, which takes one addition a row instead of two a group.
 */
export function groundOf({ rows, features, groups, x, truth, weight }: Table): Ground {
  const order = Int32Array.from(countingRows({ rows, weight }));
  const values = transpose(x, rows, features);
  const { patternOf, truths } = patternsOf(truth, rows, groups);
  const patterns = truths.length / groups;
  const weights = new Float64Array(patterns);
  const width = 2 * groups;
  const counted = kindsOf(truth, groups, weight);
  const kinds = kindsOf(truths, groups);
  const all: SomeGroups = { groups: Int32Array.from({ length: groups }, (_, group) => group), count: groups };
  const held = new Int32Array(order.length);
  const read = new Float64Array(order.length);

  function countOf(list: Int32Array, from: number, upto: number, some: SomeGroups, into: Float64Array): void {
    const byPattern = (upto - from) * (some.count - 1) >= SAVED_ADDITIONS * patterns;
    if (byPattern) {
      weights.fill(0);
      for (let at = from; at < upto; at += 1) weights[patternOf[list[at]!]!]! += weight[list[at]!]!;
    }
    for (let one = 0; one < some.count; one += 1) {
      const group = some.groups[one]!;
      let [absent, present] = [0, 0];
      if (byPattern)
        for (let pattern = 0; pattern < patterns; pattern += 1) {
          absent += weights[pattern]! * kinds[pattern * width + 2 * group]!;
          present += weights[pattern]! * kinds[pattern * width + 2 * group + 1]!;
        }
      else
        for (let at = from; at < upto; at += 1) {
          const place = list[at]! * width + 2 * group;
          absent += counted[place]!;
          present += counted[place + 1]!;
        }
      into[2 * group] = absent;
      into[2 * group + 1] = present;
    }
  }

  return {
    features,
    groups,
    order,
    countRows: (from, upto, into) => countOf(order, from, upto, all, into),
    readValues(from, upto, feature, range) {
      let [low, high] = [Infinity, -Infinity];
      const column = feature * rows;
      for (let at = from; at < upto; at += 1) {
        const value = values[column + order[at]!]!;
        read[at] = value;
        if (value < low) low = value;
        if (value > high) high = value;
      }
      range.low = low;
      range.high = high;
    },
    countBelow(from, upto, threshold, some, into) {
      let count = 0;
      for (let at = from; at < upto; at += 1) {
        // Written always and kept only if it counts: a branch that nobody can foresee costs more.
        held[count] = order[at]!;
        count += Number(read[at]! <= threshold);
      }
      countOf(held, 0, count, some, into);
      return count;
    },
    partRows(from, upto, feature, threshold) {
      const column = feature * rows;
      let middle = from;
      let others = 0;
      for (let at = from; at < upto; at += 1) {
        const row = order[at]!;
        if (values[column + row]! <= threshold) order[middle++] = row;
        else held[others++] = row;
      }
      order.set(held.subarray(0, others), middle);
      return middle;
    },
  };
}

/**
 * What each row adds to the counts of absent and of present of each group, shape [rows, groups, 2]: its weight, or 1, or
 * 0 where the truth is another or unknown.
 */
function kindsOf(truth: Int8Array, groups: number, weight?: Float64Array): Float64Array {
  const kinds = new Float64Array(2 * truth.length);
  truth.forEach((one, at) => {
    if (one >= 0) kinds[2 * at + one] = weight?.[Math.floor(at / groups)] ?? 1;
  });
  return kinds;
}

/** Number of each row's pattern of truths, and the patterns, shape [patterns, groups]. */
function patternsOf(truth: Int8Array, rows: number, groups: number) {
  const numbers = new Map<string, number>();
  const truths: number[] = [];
  const patternOf = new Uint16Array(rows);
  for (let row = 0; row < rows; row += 1) {
    const own = truth.subarray(row * groups, (row + 1) * groups);
    const name = own.join();
    const known = numbers.get(name);
    patternOf[row] = known ?? numbers.size;
    if (known !== undefined) continue;
    numbers.set(name, numbers.size);
    truths.push(...own);
  }
  return { patternOf, truths: Int8Array.from(truths) };
}
