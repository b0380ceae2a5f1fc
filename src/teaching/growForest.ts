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
  const columns = columnsOf(table);
  const overall = Float64Array.from({ length: table.groups }, (_, group) => presentShare(table, group));
  const all: number[] = [];
  for (let row = 0; row < table.rows; row += 1) if (table.weight[row]! > 0) all.push(row);
  const roots = Array.from({ length: options.trees }, () => {
    const root = grown.feature.length;
    growNode(columns, Int32Array.from(all), options, random, grown, overall);
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

/** The table as the trees read it: feature by feature, and for each row what it adds to the counts. */
interface Columns {
  readonly rows: number;
  readonly features: number;
  readonly groups: number;
  /** Shape [features, rows]. */
  readonly values: Float64Array;
  /** Weight of absent and of present, 0 where the truth is another or unknown, shape [rows, groups, 2]. */
  readonly counts: Float64Array;
}

function columnsOf({ rows, features, groups, x, truth, weight }: Table): Columns {
  const values = new Float64Array(features * rows);
  const counts = new Float64Array(rows * groups * 2);
  for (let row = 0; row < rows; row += 1) {
    for (let i = 0; i < features; i += 1) values[i * rows + row] = x[row * features + i]!;
    for (let group = 0; group < groups; group += 1) {
      const one = truth[row * groups + group]!;
      if (one >= 0) counts[2 * (row * groups + group) + one] = weight[row]!;
    }
  }
  return { rows, features, groups, values, counts };
}

function growNode(
  table: Columns,
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
  const [left, right] = parted(table, rows, split);
  growNode(table, left, options, random, grown, shares);
  grown.right[node] = grown.feature.length;
  growNode(table, right, options, random, grown, shares);
}

/** The rows at or below a threshold, and those above. */
function parted({ rows: all, values }: Columns, rows: Int32Array, split: Split): [Int32Array, Int32Array] {
  const from = split.feature * all;
  const left = new Int32Array(rows.length);
  const right = new Int32Array(rows.length);
  let [lefts, rights] = [0, 0];
  for (const row of rows)
    if (values[from + row]! <= split.threshold) left[lefts++] = row;
    else right[rights++] = row;
  return [left.subarray(0, lefts), right.subarray(0, rights)];
}

/** Weighted counts, shape [groups, 2]: absent, present. */
function countsOf({ groups, counts }: Columns, rows: Int32Array): Float64Array {
  const sum = new Float64Array(2 * groups);
  for (const row of rows)
    for (let at = 0; at < sum.length; at += 1) sum[at]! += counts[row * sum.length + at]!;
  return sum;
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

interface Split {
  readonly feature: number;
  readonly threshold: number;
}

function bestSplit(
  table: Columns,
  rows: Int32Array,
  counts: Float64Array,
  options: ForestOptions,
  random: RandomSource,
): Split | null {
  const { values, counts: added } = table;
  const kinds = counts.length;
  let best: Split | null = null;
  let least = Infinity;
  const left = new Float64Array(kinds);
  const right = new Float64Array(kinds);
  for (let tried = 0; tried < options.tries; tried += 1) {
    const feature = Math.floor(random() * table.features);
    const from = feature * table.rows;
    const threshold = randomCut(values, from, rows, random);
    if (threshold === null) continue;
    left.fill(0);
    let leftRows = 0;
    for (let at = 0; at < rows.length; at += 1) {
      const row = rows[at]!;
      if (values[from + row]! > threshold) continue;
      leftRows += 1;
      for (let kind = 0; kind < kinds; kind += 1) left[kind]! += added[row * kinds + kind]!;
    }
    if (leftRows < options.leafRows || rows.length - leftRows < options.leafRows) continue;
    for (let kind = 0; kind < kinds; kind += 1) right[kind] = counts[kind]! - left[kind]!;
    const mixed = impurity(left) + impurity(right);
    if (mixed < least) {
      least = mixed;
      best = { feature, threshold };
    }
  }
  return best;
}

/** A uniform cut between the smallest and the largest value, as a 32-bit number, as the nose will keep it. */
function randomCut(
  values: Float64Array,
  from: number,
  rows: Int32Array,
  random: RandomSource,
): number | null {
  let low = Infinity;
  let high = -Infinity;
  for (let at = 0; at < rows.length; at += 1) {
    const value = values[from + rows[at]!]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const cut = Math.fround(low + random() * (high - low));
  return cut >= low && cut < high ? cut : null;
}
