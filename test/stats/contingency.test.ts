import hypergeometricPmf from "@stdlib/stats/base/dists/hypergeometric/pmf";
import padjust from "@stdlib/stats/padjust";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fisherExact, oddsRatio, oddsRatioInterval, type TwoByTwo } from "../../src/stats/contingency.js";
import { benjaminiHochberg } from "../../src/stats/multipleTesting.js";

const count = fc.nat(25);
const tables = fc.tuple(count, count, count, count).map(([a, b, c, d]): TwoByTwo => [
  [a, b],
  [c, d],
]);

describe("Fisher's exact test", () => {
  it.each([
    // Source: SciPy 1.17.1, scipy.stats.fisher_exact (two-sided, less, greater). The first table is Fisher's tea
    // taster, the second the convictions of twins; R's help examples print the same 0.4857, 0.2429 and 0.0004652.
    [3, 1, 1, 3, 0.48571428571428565, 0.9857142857142858, 0.24285714285714283],
    [2, 10, 15, 3, 0.0005367241191434357, 0.000465180943362905, 0.9999845190186861],
    [1, 9, 11, 3, 0.0027594561852200836, 0.0013797280926100418, 0.9999663480953022],
    [0, 5, 7, 2, 0.020979020979020983, 0.01048951048951049, 1],
    [20, 31, 7, 40, 0.01200425518714657, 0.9985190648606259, 0.006271297036946842],
    [5, 0, 0, 4, 0.007936507936507934, 1, 0.007936507936507938],
  ])("of %i, %i, %i, %i", (a, b, c, d, twoSided, less, greater) => {
    const test = fisherExact([
      [a, b],
      [c, d],
    ]);
    expect(test.twoSided).toBeCloseTo(twoSided, 11);
    expect(test.less).toBeCloseTo(less, 11);
    expect(test.greater).toBeCloseTo(greater, 11);
  });

  it("sums @stdlib's hypergeometric chances", () => {
    fc.assert(
      fc.property(tables, (table) => {
        const [[a, b], [c, d]] = table;
        let sum = 0;
        for (let cell = 0; cell <= a; cell += 1) sum += hypergeometricPmf(cell, a + b + c + d, a + c, a + b);
        expect(fisherExact(table).less).toBeCloseTo(Math.min(1, sum), 9);
      }),
    );
  });

  it("does not care which way the table is turned", () => {
    fc.assert(
      fc.property(tables, (table) => {
        const [[a, b], [c, d]] = table;
        const here = fisherExact(table);
        const turned = fisherExact([
          [a, c],
          [b, d],
        ]);
        const swapped = fisherExact([
          [c, d],
          [a, b],
        ]);
        expect(turned.twoSided).toBeCloseTo(here.twoSided, 9);
        expect(swapped.twoSided).toBeCloseTo(here.twoSided, 9);
        expect(swapped.less).toBeCloseTo(here.greater, 9);
      }),
    );
  });

  it("finds nothing in an empty margin", () => {
    const test = fisherExact([
      [0, 0],
      [3, 4],
    ]);
    expect([test.twoSided, test.less, test.greater].map((p) => Number(p.toFixed(12)))).toEqual([1, 1, 1]);
  });
});

describe("odds ratio", () => {
  it("has statsmodels' interval", () => {
    // Source: statsmodels 0.15.0, Table2x2.oddsratio and oddsratio_confint.
    const table: TwoByTwo = [
      [20, 31],
      [7, 40],
    ];
    expect(oddsRatio(table)).toBeCloseTo(3.686635944700461, 12);
    expect(oddsRatioInterval(table).low).toBeCloseTo(1.383347941394797, 10);
    expect(oddsRatioInterval(table).high).toBeCloseTo(9.824921252316095, 10);
  });

  it("adds one half to each cell where one is empty", () => {
    // Source: statsmodels 0.15.0 on the table with 0.5 added.
    const table: TwoByTwo = [
      [0, 5],
      [7, 2],
    ];
    expect(oddsRatio(table)).toBe(0);
    expect(oddsRatioInterval(table).low).toBeCloseTo(0.0011992238628180587, 12);
    expect(oddsRatioInterval(table).high).toBeCloseTo(0.7657232932211, 12);
  });

  it("turns over with the columns, and may be endless or unknown", () => {
    fc.assert(
      fc.property(tables, (table) => {
        const [[a, b], [c, d]] = table;
        const other = oddsRatioInterval([
          [b, a],
          [d, c],
        ]);
        expect(oddsRatioInterval(table).low * other.high).toBeCloseTo(1, 9);
      }),
    );
    expect(oddsRatio([[5, 0], [1, 4]])).toBe(Infinity); // prettier-ignore
    expect(oddsRatio([[0, 0], [1, 4]])).toBeNull(); // prettier-ignore
  });

  it.each([
    ["a negative count", -1],
    ["half a count", 0.5],
    ["no number", NaN],
  ])("refuses %s", (_what, bad) => {
    const table: TwoByTwo = [
      [1, bad],
      [2, 3],
    ];
    expect(() => fisherExact(table)).toThrow(RangeError);
    expect(() => oddsRatio(table)).toThrow(RangeError);
    expect(() => oddsRatioInterval(table)).toThrow(RangeError);
  });

  it.each([0, 1, 95, NaN])("refuses a confidence of %s", (confidence) => {
    expect(() => oddsRatioInterval([[1, 2], [3, 4]], confidence)).toThrow(RangeError); // prettier-ignore
  });
});

describe("Benjamini-Hochberg", () => {
  it("is SciPy's, in the order given", () => {
    // Source: SciPy 1.17.1, scipy.stats.false_discovery_control.
    const adjusted = benjaminiHochberg([0.01, 0.04, 0.03, 0.005, 0.5, 0.04]);
    [0.03, 0.048, 0.048, 0.03, 0.5, 0.048].forEach((p, at) => expect(adjusted[at]).toBeCloseTo(p, 14));
  });

  it("agrees with @stdlib", () => {
    const many = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(many, (pValues) => {
        const wanted = padjust(pValues, "bh") as number[];
        benjaminiHochberg(pValues).forEach((p, at) => expect(p).toBeCloseTo(wanted[at]!, 12));
      }),
    );
  });

  it("never lowers a value, and leaves one alone", () => {
    expect([...benjaminiHochberg([0.03])]).toEqual([0.03]);
    expect([...benjaminiHochberg([])]).toEqual([]);
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true })), (pValues) => {
        benjaminiHochberg(pValues).forEach((p, at) => {
          expect(p).toBeGreaterThanOrEqual(pValues[at]! * (1 - 1e-12));
          expect(p).toBeLessThanOrEqual(1);
        });
      }),
    );
  });

  it("refuses per cent", () => expect(() => benjaminiHochberg([5])).toThrow(RangeError));
});
