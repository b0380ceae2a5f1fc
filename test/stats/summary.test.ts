import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalQuantile } from "../../src/stats/normal.js";
import {
  leastSquaresSlope,
  mean,
  median,
  medianAbsoluteDeviation,
  NORMAL_MAD_SCALE,
  quantile,
  standardDeviation,
  variance,
} from "../../src/stats/summary.js";

const numbers = fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 2, maxLength: 30 });

describe("centre and spread", () => {
  it("counts a few by hand", () => {
    expect(mean([1, 2, 6])).toBe(3);
    expect(variance([1, 2, 6])).toBe(7);
    expect(variance([1, 2, 6], 0)).toBeCloseTo(14 / 3, 14);
    expect(standardDeviation([1, 5], 0)).toBe(2);
    expect(median([5, 1, 3])).toBe(3);
    expect(median([5, 1, 3, 4])).toBe(3.5);
    expect(mean(Float64Array.of(7))).toBe(7);
  });

  it("has the quantiles of definition 7", () => {
    // Source: NumPy 2.4.6, numpy.quantile (its default is type 7).
    const values = [3, 1, 4, 1, 5, 9, 2.6];
    const wanted = [1, 1, 1.8, 3, 6.6, 9];
    [0, 0.1, 0.25, 0.5, 0.9, 1].forEach((p, at) => expect(quantile(values, p)).toBeCloseTo(wanted[at]!, 12));
    expect(values).toEqual([3, 1, 4, 1, 5, 9, 2.6]); // the caller's order is left alone
  });

  it("has SciPy's median absolute deviation", () => {
    // Source: SciPy 1.17.1, scipy.stats.median_abs_deviation, plain and scale="normal".
    const values = [1, 2, 3, 4, 100, 7.5];
    expect(medianAbsoluteDeviation(values)).toBe(2);
    expect(medianAbsoluteDeviation(values, NORMAL_MAD_SCALE)).toBeCloseTo(2.965204437011204, 12);
    expect(NORMAL_MAD_SCALE).toBeCloseTo(1 / normalQuantile(0.75), 12);
  });

  it("sorts numbers as numbers", () => {
    expect(median([10, 9, 100])).toBe(10);
  });

  it("moves with a shift and stretches with a scale", () => {
    fc.assert(
      fc.property(numbers, fc.double({ min: -100, max: 100, noNaN: true }), (values, shift) => {
        const moved = values.map((value) => shift - 2 * value);
        expect(mean(moved)).toBeCloseTo(shift - 2 * mean(values), 6);
        expect(median(moved)).toBeCloseTo(shift - 2 * median(values), 6);
        expect(standardDeviation(moved)).toBeCloseTo(2 * standardDeviation(values), 6);
        expect(medianAbsoluteDeviation(moved)).toBeCloseTo(2 * medianAbsoluteDeviation(values), 6);
        expect(quantile(moved, 0.2)).toBeCloseTo(shift - 2 * quantile(values, 0.8), 6);
      }),
    );
  });

  it("keeps its digits far from zero", () => {
    // By hand: the variance of 0, 1, 2 is 1 wherever it stands.
    expect(variance([1e9, 1e9 + 1, 1e9 + 2])).toBe(1);
  });

  it("refuses too few values", () => {
    expect(() => mean([])).toThrow(RangeError);
    expect(() => variance([1])).toThrow(RangeError);
    expect(() => variance([], 0)).toThrow(RangeError);
    expect(() => median([])).toThrow(RangeError);
    expect(() => quantile([1], 95)).toThrow(RangeError);
    expect(() => quantile([1], NaN)).toThrow(RangeError);
  });
});

describe("slope", () => {
  it("is SciPy's", () => {
    // Source: SciPy 1.17.1, scipy.stats.linregress.
    expect(leastSquaresSlope([0, 1, 2.5, 4], [1, 3, 2, 7])).toBeCloseTo(1.2653061224489797, 12);
  });

  it("finds the slope of a straight line, in any order", () => {
    expect(leastSquaresSlope([3, 1, 2], [7, 3, 5])).toBeCloseTo(2, 14);
    expect(leastSquaresSlope([3, 1, 2], [-7, -3, -5])).toBeCloseTo(-2, 14);
  });

  it("refuses a line through one place", () => {
    expect(() => leastSquaresSlope([2, 2], [1, 5])).toThrow(RangeError);
    expect(() => leastSquaresSlope([1], [1])).toThrow(RangeError);
    expect(() => leastSquaresSlope([1, 2], [1])).toThrow(RangeError);
  });
});
