import fc from "fast-check";
import { expect, it } from "vitest";
import { reliabilityCurve } from "../../src/stats/reliabilityCurve.js";

it("gives the numbers printed in scikit-learn's own example", () => {
  // Source: scikit-learn at commit 000ceb9, sklearn/calibration.py, docstring example of
  // calibration_curve with n_bins=3. Prints [0, 0.5, 1] and [0.2, 0.525, 0.85].
  const curve = reliabilityCurve(
    [0.1, 0.2, 0.3, 0.4, 0.65, 0.7, 0.8, 0.9, 1],
    [0, 0, 0, 0, 1, 1, 1, 1, 1],
    3,
  );
  expect(curve.map((bin) => bin.observedFraction)).toEqual([0, 0.5, 1]);
  [0.2, 0.525, 0.85].forEach((mean, i) => expect(curve[i]?.meanPredicted).toBeCloseTo(mean, 12));
  expect(curve.map((bin) => bin.count)).toEqual([3, 2, 4]); // counted by hand, not in the source
});

it.each([0, 0.5, 1])("keeps a bin that holds one sniff, called at %s", (p) => {
  expect(reliabilityCurve([p], [1], 10)).toEqual([{ meanPredicted: p, observedFraction: 1, count: 1 }]);
});

it("puts an edge into the bin below it, even where the product rounds up", () => {
  // 0.07 * 100 is 7.000000000000001 in doubles; by hand, 0.07 belongs to (0.06, 0.07].
  const curve = reliabilityCurve([0.065, 0.07, 0.29, 0.285, 0.3], [0, 1, 1, 0, 1], 100);
  expect(curve.map((bin) => bin.count)).toEqual([2, 2, 1]);
});

it("accounts for every sniff and every outcome, whatever their order", () => {
  const sniffs = fc.array(fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0, 1)), {
    minLength: 1,
  });
  fc.assert(
    fc.property(sniffs, fc.integer({ min: 1, max: 20 }), (pairs, binCount) => {
      const curveOf = (some: readonly (readonly [number, number])[]) =>
        reliabilityCurve(
          some.map(([p]) => p),
          some.map(([, o]) => o),
          binCount,
        );
      const curve = curveOf(pairs);
      const sum = (values: number[]) => values.reduce((a, b) => a + b, 0);
      expect(sum(curve.map((bin) => bin.count))).toBe(pairs.length);
      expect(sum(curve.map((bin) => bin.count * bin.observedFraction))).toBeCloseTo(
        sum(pairs.map(([, o]) => o)),
        9,
      );
      expect(sum(curve.map((bin) => bin.count * bin.meanPredicted))).toBeCloseTo(
        sum(pairs.map(([p]) => p)),
        9,
      );
      curveOf(pairs.toReversed()).forEach((bin, at) => expect(bin.count).toBe(curve[at]?.count));
      for (let at = 1; at < curve.length; at += 1)
        expect(curve[at]!.meanPredicted).toBeGreaterThan(curve[at - 1]!.meanPredicted);
    }),
  );
});

it.each([
  ["a per cent value", [70], [1], 3],
  ["a negative value", [-0.1], [1], 3],
  ["no number", [NaN], [1], 3],
  ["no sniffs", [], [], 3],
  ["unequal lengths", [0.1, 0.2], [1], 3],
  ["zero bins", [0.1], [1], 0],
  ["half a bin", [0.1], [1], 1.5],
  ["an outcome of 2", [0.1], [2], 3],
])("refuses %s", (_what, predicted, happened, binCount) => {
  expect(() => reliabilityCurve(predicted, happened, binCount)).toThrow(RangeError);
});
