import type { RandomSource } from "../kernel/random.js";
import type { Forest } from "../nose/models.js";
import { presentShare, type Table } from "./table.js";
import { type Ground, groundOf, type SomeGroups } from "./treeGround.js";

export interface ForestOptions {
  /** Trees, whole, >= 1. */
  readonly trees: number;
  /** Features tried at each node of one tree and the next in turn, but never more than it has rows; each whole, >= 1. */
  readonly tries: readonly number[];
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
  const ground = groundOf(table);
  const rows = ground.order.length;
  const { groups } = table;
  const most = options.trees * Math.max(1, 2 * rows - 1);
  const growing: Growing = {
    ground,
    options,
    tries: 1,
    random,
    grown: {
      nodes: 0,
      feature: new Int16Array(most),
      threshold: new Float32Array(most),
      right: new Int32Array(most),
      leaves: 0,
      shares: new Uint8Array(options.trees * Math.max(1, rows) * groups),
    },
    counts: new Float64Array(2 * groups),
    left: new Float64Array(2 * groups),
    range: { low: 0, high: 0 },
    mixed: { groups: new Int32Array(groups), count: 0 },
    shares: [Float64Array.from({ length: groups }, (_, group) => presentShare(table, group))],
  };
  const { grown } = growing;
  const roots = Int32Array.from({ length: options.trees }, (_, tree) => {
    const root = grown.nodes;
    growing.tries = options.tries[tree % options.tries.length]!;
    growNode(growing, 0, rows, 1);
    return root;
  });
  return {
    trees: options.trees,
    roots,
    feature: grown.feature.slice(0, grown.nodes),
    threshold: grown.threshold.slice(0, grown.nodes),
    right: grown.right.slice(0, grown.nodes),
    leaves: grown.shares.slice(0, grown.leaves * groups),
  };
}

/** The forest so far: room for the most that can grow, and how much of it is used. */
interface Grown {
  nodes: number;
  readonly feature: Int16Array;
  readonly threshold: Float32Array;
  readonly right: Int32Array;
  leaves: number;
  readonly shares: Uint8Array;
}

/** What all nodes share; the lists are used again and again, because making one costs more than filling it. */
interface Growing {
  readonly ground: Ground;
  readonly options: ForestOptions;
  /** Of the tree in hand. */
  tries: number;
  readonly random: RandomSource;
  readonly grown: Grown;
  /** Counts of the node in hand and of those left of a cut, shape [groups, 2]. */
  readonly counts: Float64Array;
  readonly left: Float64Array;
  readonly range: { low: number; high: number };
  /** Groups that are both absent and present in the node in hand: no cut does anything for the others. */
  readonly mixed: SomeGroups;
  /** Share of present in the node in hand and in those above it, by depth; the first is that of the whole table. */
  readonly shares: Float64Array[];
}

/** Grows the node of the rows from one place of the order up to another, and all below it. */
function growNode(growing: Growing, from: number, upto: number, depth: number): void {
  const { ground, options, grown, counts } = growing;
  const node = grown.nodes++;
  ground.countRows(from, upto, counts);
  const shares = (growing.shares[depth] ??= new Float64Array(ground.groups));
  fillShares(shares, counts, growing.shares[depth - 1]!);
  findMixed(growing.mixed, counts);
  const isLeaf = upto - from < 2 * options.leafRows || growing.mixed.count === 0;
  const split = isLeaf ? null : bestSplit(growing, from, upto);
  if (split === null) {
    grown.feature[node] = -1;
    grown.right[node] = grown.leaves;
    const place = grown.leaves++ * ground.groups;
    for (let group = 0; group < shares.length; group += 1)
      grown.shares[place + group] = Math.round(255 * shares[group]!);
    return;
  }
  grown.feature[node] = split.feature;
  grown.threshold[node] = split.threshold;
  const middle = ground.partRows(from, upto, split.feature, split.threshold);
  growNode(growing, from, middle, depth + 1);
  grown.right[node] = grown.nodes;
  growNode(growing, middle, upto, depth + 1);
}

/** Share of present; where no truth is known, the share of the node above. */
function fillShares(shares: Float64Array, counts: Float64Array, above: Float64Array): void {
  for (let group = 0; group < shares.length; group += 1) {
    const all = counts[2 * group]! + counts[2 * group + 1]!;
    shares[group] = all > 0 ? counts[2 * group + 1]! / all : above[group]!;
  }
}

function findMixed(mixed: SomeGroups, counts: Float64Array): void {
  mixed.count = 0;
  for (let group = 0; group < mixed.groups.length; group += 1)
    if (counts[2 * group]! > 0 && counts[2 * group + 1]! > 0) mixed.groups[mixed.count++] = group;
}

/** Sum over groups of 2 * absent * present / all, of some rows and of the others: nodes' weight times their Gini impurity. */
function mixedAfter({ groups, count }: SomeGroups, left: Float64Array, counts: Float64Array): number {
  let sum = 0;
  for (let one = 0; one < count; one += 1) {
    const at = 2 * groups[one]!;
    const absent = left[at]!;
    const present = left[at + 1]!;
    const otherAbsent = counts[at]! - absent;
    const otherPresent = counts[at + 1]! - present;
    if (absent + present > 0) sum += (2 * absent * present) / (absent + present);
    if (otherAbsent + otherPresent > 0)
      sum += (2 * otherAbsent * otherPresent) / (otherAbsent + otherPresent);
  }
  return sum;
}

interface Split {
  readonly feature: number;
  readonly threshold: number;
}

/** The best of some random cuts of random features; null if none leaves enough rows on either side. */
function bestSplit(growing: Growing, from: number, upto: number): Split | null {
  const { ground, options, random, counts, left, range, mixed } = growing;
  let best: Split | null = null;
  let least = Infinity;
  // Among few rows the best of many cuts is the best by chance.
  const tries = Math.min(growing.tries, upto - from);
  for (let tried = 0; tried < tries; tried += 1) {
    const feature = Math.floor(random() * ground.features);
    ground.readValues(from, upto, feature, range);
    // As a 32-bit number, as the nose will keep it.
    const threshold = Math.fround(range.low + random() * (range.high - range.low));
    if (!(threshold >= range.low && threshold < range.high)) continue;
    const leftRows = ground.countBelow(from, upto, threshold, mixed, left);
    if (leftRows < options.leafRows || upto - from - leftRows < options.leafRows) continue;
    const mixture = mixedAfter(mixed, left, counts);
    if (mixture < least) {
      least = mixture;
      best = { feature, threshold };
      // Nothing parts them better than wholly.
      if (mixture === 0) break;
    }
  }
  return best;
}
