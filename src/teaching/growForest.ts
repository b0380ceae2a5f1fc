import type { RandomSource } from "../kernel/random.js";
import type { Forest } from "../nose/models.js";
import { presentShare, type Table } from "./table.js";

export interface ForestOptions {
  /** Trees, whole, >= 1. */
  readonly trees: number;
  /** Features tried at each node, whole, >= 1. */
  readonly tries: number;
  /** Rows in a leaf at least, whole, >= 1. */
  readonly leafRows: number;
}

/**
 * Extremely randomised trees that answer for all groups at once; a split is chosen by the Gini impurity summed
 * over the groups, unknown truths left out.
 *
 * @see Geurts, Ernst and Wehenkel, Machine Learning 63 (2006), 3-42
 */
export function growForest(table: Table, options: ForestOptions, random: RandomSource): Forest {
  const grown: Grown = { feature: [], threshold: [], right: [], leaves: [] };
  const overall = Float64Array.from({ length: table.groups }, (_, group) => presentShare(table, group));
  const all: number[] = [];
  for (let row = 0; row < table.rows; row += 1) if (table.weight[row]! > 0) all.push(row);
  const roots = Array.from({ length: options.trees }, () => {
    const root = grown.feature.length;
    growNode(table, Int32Array.from(all), options, random, grown, overall);
    return root;
  });
  return {
    trees: options.trees,
    roots: Int32Array.from(roots),
    feature: Int16Array.from(grown.feature),
    threshold: Float32Array.from(grown.threshold),
    right: Int32Array.from(grown.right),
    leaves: Uint8Array.from(grown.leaves, (share) => Math.round(255 * share)),
  };
}

interface Grown {
  readonly feature: number[];
  readonly threshold: number[];
  readonly right: number[];
  readonly leaves: number[];
}

function growNode(
  table: Table,
  rows: Int32Array,
  options: ForestOptions,
  random: RandomSource,
  grown: Grown,
  above: Float64Array,
): void {
  const node = grown.feature.length;
  const counts = countsOf(table, rows);
  const shares = sharesOf(counts, above);
  const split =
    rows.length < 2 * options.leafRows || isPure(counts)
      ? null
      : bestSplit(table, rows, counts, options, random);
  grown.feature.push(split?.feature ?? -1);
  grown.threshold.push(split?.threshold ?? 0);
  if (split === null) {
    grown.right.push(grown.leaves.length / table.groups);
    grown.leaves.push(...shares);
    return;
  }
  grown.right.push(0);
  const isLeft = (row: number) => table.x[row * table.features + split.feature]! <= split.threshold;
  growNode(table, rows.filter(isLeft), options, random, grown, shares);
  grown.right[node] = grown.feature.length;
  growNode(
    table,
    rows.filter((row) => !isLeft(row)),
    options,
    random,
    grown,
    shares,
  );
}

/** Weighted counts, shape [groups, 2]: absent, present. */
function countsOf(table: Table, rows: Int32Array): Float64Array {
  const counts = new Float64Array(2 * table.groups);
  for (const row of rows)
    for (let group = 0; group < table.groups; group += 1) {
      const truth = table.truth[row * table.groups + group]!;
      if (truth >= 0) counts[2 * group + truth]! += table.weight[row]!;
    }
  return counts;
}

/** Share of present; where no truth is known, the share of the node above. */
function sharesOf(counts: Float64Array, above: Float64Array): Float64Array {
  return above.map((share, group) => {
    const all = counts[2 * group]! + counts[2 * group + 1]!;
    return all > 0 ? counts[2 * group + 1]! / all : share;
  });
}

function isPure(counts: Float64Array): boolean {
  for (let at = 0; at < counts.length; at += 2) if (counts[at]! > 0 && counts[at + 1]! > 0) return false;
  return true;
}

/** Sum over groups of 2 * absent * present / all: the node's weight times its Gini impurity. */
function impurity(counts: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < counts.length; at += 2) {
    const all = counts[at]! + counts[at + 1]!;
    if (all > 0) sum += (2 * counts[at]! * counts[at + 1]!) / all;
  }
  return sum;
}

function bestSplit(
  table: Table,
  rows: Int32Array,
  counts: Float64Array,
  options: ForestOptions,
  random: RandomSource,
): { feature: number; threshold: number } | null {
  let best: { feature: number; threshold: number } | null = null;
  let least = Infinity;
  const left = new Float64Array(counts.length);
  const right = new Float64Array(counts.length);
  for (let tried = 0; tried < options.tries; tried += 1) {
    const feature = Math.floor(random() * table.features);
    const threshold = randomCut(table, rows, feature, random);
    if (threshold === null) continue;
    left.fill(0);
    let leftRows = 0;
    for (const row of rows) {
      if (table.x[row * table.features + feature]! > threshold) continue;
      leftRows += 1;
      for (let group = 0; group < table.groups; group += 1) {
        const truth = table.truth[row * table.groups + group]!;
        if (truth >= 0) left[2 * group + truth]! += table.weight[row]!;
      }
    }
    if (leftRows < options.leafRows || rows.length - leftRows < options.leafRows) continue;
    for (let at = 0; at < counts.length; at += 1) right[at] = counts[at]! - left[at]!;
    const mixed = impurity(left) + impurity(right);
    if (mixed < least) {
      least = mixed;
      best = { feature, threshold };
    }
  }
  return best;
}

/** A uniform cut between the smallest and the largest value, as a 32-bit number, as the nose will keep it. */
function randomCut(table: Table, rows: Int32Array, feature: number, random: RandomSource): number | null {
  let low = Infinity;
  let high = -Infinity;
  for (const row of rows) {
    const value = table.x[row * table.features + feature]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const cut = Math.fround(low + random() * (high - low));
  return cut >= low && cut < high ? cut : null;
}
