import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import type { Forest } from "../../src/nose/models.js";
import { growForest } from "../../src/teaching/growForest.js";
import { presentShare, rowOf, type Table } from "../../src/teaching/table.js";

const FEATURES = 3;
const GROUPS = 2;

/** A table of few values, so that ties and constant features come up, with unknown truths and rows that do not count. */
const tables: fc.Arbitrary<Table> = fc.integer({ min: 1, max: 40 }).chain((rows) =>
  fc
    .record({
      x: fc.array(fc.integer({ min: -3, max: 3 }), {
        minLength: rows * FEATURES,
        maxLength: rows * FEATURES,
      }),
      truth: fc.array(fc.constantFrom(-1, 0, 1), { minLength: rows * GROUPS, maxLength: rows * GROUPS }),
      weight: fc.array(fc.constantFrom(0, 0.5, 1, 1), { minLength: rows, maxLength: rows }),
    })
    .map(({ x, truth, weight }) => ({
      rows,
      features: FEATURES,
      groups: GROUPS,
      x: Float64Array.from(x),
      truth: Int8Array.from(truth),
      weight: Float64Array.from(weight),
    })),
);

/** The nodes from the root of a tree to the leaf of a row. */
function pathOf(forest: Forest, tree: number, x: Float64Array): number[] {
  const path = [forest.roots[tree]!];
  for (;;) {
    const node = path.at(-1)!;
    const feature = forest.feature[node]!;
    if (feature < 0) return path;
    path.push(x[feature]! <= forest.threshold[node]! ? node + 1 : forest.right[node]!);
  }
}

/** Weighted share of present among some rows, null where no truth is known. */
function shareOf(table: Table, rows: readonly number[], group: number): number | null {
  let [present, all] = [0, 0];
  for (const row of rows) {
    const truth = table.truth[row * GROUPS + group]!;
    if (truth < 0) continue;
    all += table.weight[row]!;
    present += truth * table.weight[row]!;
  }
  return all > 0 ? present / all : null;
}

describe("a tree", () => {
  it("says in each leaf the share of present among the rows that come there, or of the nearest node above that knows", () => {
    fc.assert(
      fc.property(tables, fc.integer(), (table, seed) => {
        const forest = growForest(table, { trees: 3, tries: [2], leafRows: 1 }, seededRandom(seed));
        const counted = [...table.weight.keys()].filter((row) => table.weight[row]! > 0);
        for (let tree = 0; tree < 3; tree += 1) {
          const paths = new Map(counted.map((row) => [row, pathOf(forest, tree, rowOf(table, row))]));
          for (const path of paths.values())
            for (let group = 0; group < GROUPS; group += 1) {
              const shares = path.map((node) => {
                const there = counted.filter((row) => paths.get(row)!.includes(node));
                return shareOf(table, there, group);
              });
              const wanted = shares.findLast((share) => share !== null) ?? presentShare(table, group);
              const leaf = forest.right[path.at(-1)!]!;
              expect(forest.leaves[leaf * GROUPS + group]! / 255).toBeCloseTo(wanted, 2);
            }
        }
      }),
    );
  });

  it("leaves at least the rows asked for in each leaf", () => {
    fc.assert(
      fc.property(tables, fc.integer(), fc.integer({ min: 2, max: 5 }), (table, seed, leafRows) => {
        const forest = growForest(table, { trees: 1, tries: [3], leafRows }, seededRandom(seed));
        const counted = [...table.weight.keys()].filter((row) => table.weight[row]! > 0);
        const inLeaf = new Map<number, number>();
        for (const row of counted) {
          const leaf = pathOf(forest, 0, rowOf(table, row)).at(-1)!;
          inLeaf.set(leaf, (inLeaf.get(leaf) ?? 0) + 1);
        }
        const split = inLeaf.size > 1;
        for (const rows of inLeaf.values()) expect(rows).toBeGreaterThanOrEqual(split ? leafRows : 0);
      }),
    );
  });

  it("parts two foods that one feature tells apart", () => {
    const rows = 20;
    const table: Table = {
      rows,
      features: 1,
      groups: 1,
      x: Float64Array.from({ length: rows }, (_, row) => (row < 10 ? row / 10 : 5 + row)),
      truth: Int8Array.from({ length: rows }, (_, row) => (row < 10 ? 0 : 1)),
      weight: new Float64Array(rows).fill(1),
    };
    const forest = growForest(table, { trees: 5, tries: [8], leafRows: 1 }, seededRandom(1));
    for (let row = 0; row < rows; row += 1)
      for (let tree = 0; tree < 5; tree += 1) {
        const leaf = pathOf(forest, tree, rowOf(table, row)).at(-1)!;
        expect(forest.leaves[forest.right[leaf]!]).toBe(row < 10 ? 0 : 255);
      }
  });

  it("takes its number of tries in turn with the others", () => {
    const [rows, features, telling] = [40, 5, 3];
    const noise = seededRandom(2);
    const table: Table = {
      rows,
      features,
      groups: 1,
      x: Float64Array.from({ length: rows * features }, (_, at) =>
        at % features === telling ? Number(at >= (rows * features) / 2) : noise(),
      ),
      truth: Int8Array.from({ length: rows }, (_, row) => Number(row >= rows / 2)),
      weight: new Float64Array(rows).fill(1),
    };
    const forest = growForest(table, { trees: 40, tries: [1, 40], leafRows: 1 }, seededRandom(3));
    const foundAtOnce = Array.from(forest.roots, (root) => forest.feature[root] === telling);
    expect(foundAtOnce.filter((_, tree) => tree % 2 === 1)).not.toContain(false);
    expect(foundAtOnce.filter((found, tree) => tree % 2 === 0 && found).length).toBeLessThan(10);
  });
});
