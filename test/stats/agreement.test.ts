import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cohenKappa, mcNemar, pairedDifference } from "../../src/stats/agreement.js";

const count = fc.nat(60);

describe("Cohen's kappa", () => {
  it.each([
    // Sources: a textbook example (value from memory); a printed worked example (0.21); Cohen (1960), shares.
    [
      [
        [20, 5],
        [10, 15],
      ],
      0.7,
      0.5,
      0.4,
    ],
    [
      [
        [12, 2],
        [4, 2],
      ],
      0.7,
      0.62,
      0.2105,
    ],
    [
      [
        [0.44, 0.05, 0.01],
        [0.07, 0.2, 0.03],
        [0.09, 0.05, 0.06],
      ],
      0.7,
      0.41,
      0.492,
    ],
  ])("of %j", (table, observed, expected, wanted) => {
    const kappa = cohenKappa(table);
    expect(kappa.observed).toBeCloseTo(observed, 12);
    expect(kappa.expected).toBeCloseTo(expected, 12);
    expect(Math.abs(kappa.kappa! - wanted)).toBeLessThan(0.0005);
  });

  it("is 1 for full agreement, below nought for contradiction, and unknown with one label only", () => {
    expect(cohenKappa([[3, 0], [0, 9]]).kappa).toBe(1); // prettier-ignore
    expect(cohenKappa([[0, 5], [5, 0]]).kappa).toBe(-1); // prettier-ignore
    expect(cohenKappa([[7, 0], [0, 0]]).kappa).toBeNull(); // prettier-ignore
  });

  it("does not care who is first, nor for names and scale", () => {
    fc.assert(
      fc.property(count, count, count, count, (a, b, c, d) => {
        fc.pre(a + b + c + d > 0);
        const here = cohenKappa([
          [a, b],
          [c, d],
        ]).kappa;
        fc.pre(here !== null);
        const others = [
          [[a, c], [b, d]],
          [[d, c], [b, a]],
          [[3 * a, 3 * b], [3 * c, 3 * d]],
        ]; // prettier-ignore
        others.forEach((table) => expect(cohenKappa(table).kappa).toBeCloseTo(here!, 10));
      }),
    );
  });

  it("refuses tables that are not square, or empty, or negative", () => {
    expect(() => cohenKappa([[1, 2]])).toThrow(RangeError);
    expect(() => cohenKappa([])).toThrow(RangeError);
    expect(() => cohenKappa([[0]])).toThrow(RangeError);
    expect(() => cohenKappa([[1, -1], [1, 1]])).toThrow(RangeError); // prettier-ignore
  });
});

describe("McNemar's test", () => {
  it("is R's for the approval ratings", () => {
    // Source: R 4.2.2, help example of mcnemar.test (Agresti 1990, p. 350).
    const test = mcNemar(86, 150);
    expect(test.chiSquared).toBeCloseTo(17.3559, 4);
    expect(test.correctedChiSquared).toBeCloseTo(16.8178, 4);
    expect(test.correctedP).toBeCloseTo(4.115e-5, 8);
  });

  it("is exact for few", () => {
    // Source: SciPy 1.17.1, scipy.stats.binomtest(6, 22, 0.5).
    const test = mcNemar(6, 16);
    expect(test.chiSquared).toBeCloseTo(4.5455, 4);
    expect(test.correctedChiSquared).toBeCloseTo(3.6818, 4);
    expect(test.exactP).toBeCloseTo(0.052478790283203125, 12);
    expect(mcNemar(0, 5).exactP).toBeCloseTo(2 / 32, 14); // by hand
  });

  it("does not care who is first, and finds nothing in nothing", () => {
    fc.assert(
      fc.property(count, count, (b, c) => {
        expect(mcNemar(b, c)).toEqual(mcNemar(c, b));
      }),
    );
    expect(mcNemar(0, 0).exactP).toBe(1);
    expect(mcNemar(4, 4)).toEqual({ chiSquared: 0, correctedChiSquared: 0, correctedP: 1, exactP: 1 });
    expect(() => mcNemar(-1, 2)).toThrow(RangeError);
    expect(() => mcNemar(1, 2.5)).toThrow(RangeError);
  });
});

describe("difference on the same plates", () => {
  it("has the interval of the paired formula", () => {
    // Formula: AOAC Official Methods (2012), Appendices H and J; by hand for 6 and 2 of 20:
    // sqrt(8/400 - 16/8000) = 0.134164.
    const { difference, interval } = pairedDifference(6, 2, 20);
    expect(difference).toBeCloseTo(0.2, 14);
    expect(interval.high - difference).toBeCloseTo(1.959964 * 0.1341641, 6);
    expect(difference - interval.low).toBeCloseTo(1.959964 * 0.1341641, 6);
  });

  it("turns over with the order, and stays a difference of shares", () => {
    fc.assert(
      fc.property(count, count, count, (b, c, rest) => {
        fc.pre(b + c + rest > 0);
        const here = pairedDifference(b, c, b + c + rest);
        const there = pairedDifference(c, b, b + c + rest);
        expect(here.difference).toBeCloseTo(-there.difference, 14);
        expect(here.interval.low).toBeCloseTo(-there.interval.high, 12);
        expect(here.interval.low).toBeGreaterThanOrEqual(-1);
        expect(here.interval.high).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("refuses what does not fit", () => {
    expect(() => pairedDifference(6, 5, 10)).toThrow(RangeError);
    expect(() => pairedDifference(0, 0, 0)).toThrow(RangeError);
    for (const confidence of [0, 1, 95, NaN])
      expect(() => pairedDifference(1, 0, 2, confidence)).toThrow(RangeError);
  });
});
