import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import {
  conformalPValue,
  conformalRank,
  conformalSet,
  conformalThreshold,
  leastCalibrationCount,
  mondrianPValues,
} from "../../src/stats/conformal.js";

/** Nineteen invented scores, in rising order so that ranks can be read off. */
const SCORES = [
  0.02, 0.05, 0.07, 0.08, 0.11, 0.12, 0.15, 0.19, 0.22, 0.25, 0.28, 0.31, 0.33, 0.4, 0.45, 0.52, 0.6, 0.71,
  0.83,
];

describe("rank and cut-off", () => {
  it.each([
    // Source: k = ceil((n + 1)(1 - alpha)), Angelopoulos and Bates, arXiv 2107.07511; by hand.
    [9, 0.1, 9],
    [10, 0.1, 10],
    [19, 0.05, 19],
    [19, 0.1, 18],
    [20, 0.1, 19],
    [50, 0.05, 49],
    [99, 0.1, 90],
    [100, 0.1, 91],
    [500, 0.1, 451],
    [8, 0.1, 9],
    [0, 0.1, 1],
  ])("of %i scores at alpha %s takes rank %i", (count, alpha, rank) => {
    expect(conformalRank(count, alpha)).toBe(rank);
  });

  it("takes the k-th score itself, in any order, and nothing between", () => {
    // Source: the 19th, 18th and 16th smallest of the list, by hand.
    const shuffled = [...SCORES].reverse();
    expect([0.05, 0.1, 0.2].map((alpha) => conformalThreshold(shuffled, alpha))).toEqual([0.83, 0.71, 0.52]);
  });

  it("leaves nothing out when the scores are too few", () => {
    expect(conformalThreshold(SCORES.slice(0, 8), 0.1)).toBe(Infinity);
    expect(conformalThreshold(SCORES.slice(0, 9), 0.1)).toBe(0.22);
    expect(conformalThreshold([], 0.1)).toBe(Infinity);
  });

  it.each([
    [0.1, 9],
    [0.05, 19],
    [0.01, 99],
    [0.2, 4],
    [0.3, 3],
    [0.5, 1],
    [0.9, 1],
  ])("needs, at alpha %s, %i scores", (alpha, least) => {
    expect(leastCalibrationCount(alpha)).toBe(least);
    expect(conformalRank(least, alpha)).toBeLessThanOrEqual(least);
    if (least > 1) expect(conformalRank(least - 1, alpha)).toBe(least);
  });
});

describe("p-values", () => {
  it("counts the scores at least as strange, itself included", () => {
    // By hand from the list: 4, 0 and 19 scores are as large.
    expect(conformalPValue(SCORES, 0.5)).toBe(0.25);
    expect(conformalPValue(SCORES, 0.9)).toBe(0.05);
    expect(conformalPValue(SCORES, 0.01)).toBe(1);
    expect(conformalPValue(SCORES, 0.83)).toBe(0.1); // a tie counts
    expect(conformalPValue([], 5)).toBe(1);
  });

  it("says by p-value what the cut-off says", () => {
    const scores = fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 60 });
    fc.assert(
      fc.property(
        scores,
        fc.integer({ min: -1, max: 21 }),
        fc.integer({ min: 1, max: 99 }),
        (known, one, hundredths) => {
          const alpha = hundredths / 100;
          const kept = conformalSet({ present: conformalPValue(known, one) }, alpha);
          expect(kept.length === 1).toBe(one <= conformalThreshold(known, alpha));
        },
      ),
      { numRuns: 1000 },
    );
  });

  it("compares each label with its own kind only", () => {
    const pValues = mondrianPValues(
      { present: [0.1, 0.2, 0.3], absent: [0.5, 0.6, 0.7, 0.8] },
      { present: 0.25, absent: 0.25 },
    );
    expect(pValues).toEqual({ present: 0.5, absent: 1 }); // by hand: (1 + 1) / 4 and (1 + 4) / 5
    expect(conformalSet(pValues, 0.5)).toEqual(["absent"]);
    expect(conformalSet(pValues, 0.4)).toEqual(["present", "absent"]);
  });

  it("gives an empty set for a plate strange under each label", () => {
    expect(conformalSet({ present: 0.04, absent: 0.01 }, 0.05)).toEqual([]);
  });

  it("keeps its promise for each label, by simulation with unequal sizes", () => {
    // Exchangeable scores: a label is left out with chance floor((n + 1) alpha) / (n + 1), by hand.
    const random = seededRandom(20);
    const sizes = { present: 19, absent: 45 } as const;
    const draw = (count: number) => Array.from({ length: count }, () => random());
    const runs = 20_000;
    const leftOut = { present: 0, absent: 0 };
    for (let run = 0; run < runs; run += 1) {
      const calibration = { present: draw(sizes.present), absent: draw(sizes.absent) };
      const kept = conformalSet(mondrianPValues(calibration, { present: random(), absent: random() }), 0.1);
      if (!kept.includes("present")) leftOut.present += 1;
      if (!kept.includes("absent")) leftOut.absent += 1;
    }
    expect(Math.abs(leftOut.present / runs - 2 / 20)).toBeLessThan(0.009); // four standard errors
    expect(Math.abs(leftOut.absent / runs - 4 / 46)).toBeLessThan(0.009);
  });
});

it.each([0, 1, -0.1, 5, NaN])("refuses alpha %s", (alpha) => {
  expect(() => conformalRank(10, alpha)).toThrow(RangeError);
  expect(() => leastCalibrationCount(alpha)).toThrow(RangeError);
  expect(() => conformalThreshold([1], alpha)).toThrow(RangeError);
  expect(() => conformalSet({ present: 0.5 }, alpha)).toThrow(RangeError);
});

it("refuses a broken count, a hole for a score and a label without one", () => {
  expect(() => conformalRank(1.5, 0.1)).toThrow(RangeError);
  expect(() => conformalRank(-1, 0.1)).toThrow(RangeError);
  expect(() => conformalPValue([1], NaN)).toThrow(RangeError);
  expect(() => conformalPValue([1, NaN, 2], 1.5)).toThrow(RangeError);
  expect(() => conformalThreshold([1, NaN, 2], 0.5)).toThrow(RangeError);
  const noAbsent = { present: 0.5 } as { present: number; absent: number };
  expect(() => mondrianPValues({ present: [1], absent: [1] }, noAbsent)).toThrow(RangeError);
});
