import betaCdf from "@stdlib/stats/base/dists/beta/cdf";
import binomialCdfReference from "@stdlib/stats/base/dists/binomial/cdf";
import chiSquaredCdfReference from "@stdlib/stats/base/dists/chisquare/cdf";
import normalCdfReference from "@stdlib/stats/base/dists/normal/cdf";
import normalQuantileReference from "@stdlib/stats/base/dists/normal/quantile";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inverseRegularisedBeta, logBeta, logGamma, regularisedBeta } from "../../src/stats/beta.js";
import { binomialCdf, binomialUpperTail } from "../../src/stats/binomial.js";
import { chiSquaredCdf, chiSquaredQuantile, chiSquaredUpperTail } from "../../src/stats/chiSquared.js";
import { regularisedGammaLower, regularisedGammaUpper } from "../../src/stats/gamma.js";
import { normalCdf, normalDensity, normalQuantile } from "../../src/stats/normal.js";

/** Close in relative terms, which toBeCloseTo cannot say. */
const expectRelative = (actual: number, wanted: number, tolerance = 1e-12) =>
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(tolerance * Math.abs(wanted));

const shape = fc.double({ min: 0.05, max: 500, noNaN: true });
const fraction = fc.double({ min: 0, max: 1, noNaN: true });

describe("gamma function", () => {
  it.each([
    // Source: SciPy 1.17.1, scipy.special.gammaln.
    [1e-5, 11.512919692895826],
    [0.3, 1.0957979948180756],
    [2.5, 0.2846828704729192],
    [10, 12.801827480081469],
    [171.5, 709.1431630309283],
    [1e6, 12815504.569147611],
  ])("has the logarithm of gamma at %s", (x, wanted) => expectRelative(logGamma(x), wanted, 1e-14));

  it("is the factorial one lower", () => {
    // Source: definition; factorials by hand.
    let factorial = 1;
    for (let n = 1; n <= 20; n += 1) {
      expect(logGamma(n)).toBeCloseTo(Math.log(factorial), 12);
      factorial *= n;
    }
  });

  it("is the square root of pi at one half", () => {
    // Source: Abramowitz and Stegun 6.1.8.
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 14);
  });

  it("splits into shares below and above that add up to 1", () => {
    fc.assert(
      fc.property(shape, fc.double({ min: 0, max: 1000, noNaN: true }), (a, x) => {
        const sum = regularisedGammaLower(a, x) + regularisedGammaUpper(a, x);
        expect(sum).toBeCloseTo(1, 12);
      }),
    );
    expect(regularisedGammaUpper(2, Infinity)).toBe(0);
    expect(regularisedGammaLower(2, Infinity)).toBe(1);
    expect(regularisedGammaLower(2, 0)).toBe(0);
  });

  it("has the exponential tail for shape 1", () => {
    // Source: Abramowitz and Stegun 6.5.2, with a = 1: Q(1, x) = exp(-x).
    [0.1, 1, 5, 40, 300].forEach((x) => expectRelative(regularisedGammaUpper(1, x), Math.exp(-x)));
  });

  it.each([0, -1, NaN, Infinity])("refuses a shape of %s", (x) => {
    expect(() => logGamma(x)).toThrow(RangeError);
    expect(() => regularisedGammaLower(x, 1)).toThrow(RangeError);
    expect(() => regularisedGammaUpper(x, 1)).toThrow(RangeError);
    expect(() => regularisedBeta(0.5, x, 1)).toThrow(RangeError);
    expect(() => regularisedBeta(0.5, 1, x)).toThrow(RangeError);
    expect(() => inverseRegularisedBeta(0.5, x, 1)).toThrow(RangeError);
  });
});

describe("incomplete beta function", () => {
  it.each([
    // Source: SciPy 1.17.1, scipy.special.betainc; the first is 0.5248 exactly, by hand.
    [2, 3, 0.4, 0.5248],
    [0.5, 0.5, 0.01, 0.06376856085851985],
    [200, 1, 0.99, 0.1339796748579617],
    [3000, 4000, 0.43, 0.5958415156690128],
    [1e-3, 5, 0.2, 0.9997834456464277],
    [50, 1000, 0.1, 0.9999999998306882],
  ])("I(%s, %s) at %s", (a, b, x, wanted) => expectRelative(regularisedBeta(x, a, b), wanted, 1e-10));

  it.each([
    // Source: SciPy 1.17.1, scipy.special.betaincinv.
    [1, 20, 0.95, 0.13910834066826516],
    [3, 48, 0.95, 0.12061415542204412],
    [0.5, 0.5, 0.01, 0.00024671981713422146],
    [200, 1, 0.025, 0.9817246596448638],
    [3000, 4000, 0.975, 0.44018245818088],
    [5, 0.2, 0.3, 0.9740834913088363],
    [0.01, 5, 0.2, 1.5896217480462651e-71],
  ])("turned round: shapes %s, %s at %s", (a, b, p, wanted) =>
    expectRelative(inverseRegularisedBeta(p, a, b), wanted, 1e-11),
  );

  it("agrees with @stdlib over many shapes", () => {
    fc.assert(
      fc.property(fraction, shape, shape, (x, a, b) => {
        expect(regularisedBeta(x, a, b)).toBeCloseTo(betaCdf(x, a, b), 10);
      }),
    );
  });

  it("mirrors: I(x; a, b) = 1 - I(1 - x; b, a)", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), shape, shape, (x, a, b) => {
        expect(regularisedBeta(x, a, b)).toBeCloseTo(1 - regularisedBeta(1 - x, b, a), 9);
      }),
    );
  });

  it("comes back to where it started", () => {
    fc.assert(
      fc.property(fraction, shape, shape, (p, a, b) => {
        const x = inverseRegularisedBeta(p, a, b);
        // Near 1 neighbouring doubles can lie far apart in probability, so check that x is bracketed.
        const next = Math.min(1, x * (1 + 1e-13) + 1e-300);
        const previous = Math.max(0, x * (1 - 1e-13));
        expect(regularisedBeta(previous, a, b)).toBeLessThanOrEqual(p + 1e-12);
        expect(regularisedBeta(next, a, b)).toBeGreaterThanOrEqual(p - 1e-12);
      }),
    );
  });

  it("is symmetric in its complete form", () => {
    expect(logBeta(2, 3)).toBeCloseTo(Math.log(1 / 12), 13); // by hand: 1! 2! / 4!
    expect(logBeta(3, 2)).toBeCloseTo(logBeta(2, 3), 14);
  });

  it.each([-0.1, 1.1, 50, NaN])("refuses a fraction of %s", (x) => {
    expect(() => regularisedBeta(x, 1, 1)).toThrow(RangeError);
    expect(() => inverseRegularisedBeta(x, 1, 1)).toThrow(RangeError);
    expect(() => normalQuantile(x)).toThrow(RangeError);
    expect(() => chiSquaredQuantile(x, 1)).toThrow(RangeError);
    expect(() => binomialCdf(1, 2, x)).toThrow(RangeError);
  });

  it("keeps the ends", () => {
    expect([regularisedBeta(0, 2, 3), regularisedBeta(1, 2, 3)]).toEqual([0, 1]);
    expect([inverseRegularisedBeta(0, 2, 3), inverseRegularisedBeta(1, 2, 3)]).toEqual([0, 1]);
  });
});

describe("normal distribution", () => {
  it.each([
    // Source: SciPy 1.17.1, scipy.stats.norm.cdf.
    [-10, 7.61985302416047e-24],
    [-3, 0.0013498980316300933],
    [-0.5, 0.3085375387259869],
    [1e-9, 0.5000000003989423],
    [1.96, 0.9750021048517795],
    [5, 0.9999997133484281],
  ])("share below %s", (z, wanted) => expectRelative(normalCdf(z), wanted, 1e-13));

  it.each([
    // Source: SciPy 1.17.1, scipy.stats.norm.ppf.
    [1e-300, -37.0470962993612],
    [1e-12, -7.034483825301132],
    [1e-10, -6.361340902404056],
    [0.001, -3.090232306167813],
    [0.3, -0.5244005127080409],
    [0.975, 1.959963984540054],
    [0.999999, 4.753424308817087],
  ])("quantile at %s", (p, wanted) => expectRelative(normalQuantile(p), wanted, 1e-11));

  it("agrees with @stdlib and comes back", () => {
    fc.assert(
      fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (z) => {
        expect(normalCdf(z)).toBeCloseTo(normalCdfReference(z, 0, 1), 14);
        expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 14);
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (p) => {
        // Deep in the tail @stdlib itself strays: at 1e-12 by 3e-6 from SciPy's value above.
        if (p > 1e-4 && p < 1 - 1e-4)
          expect(normalQuantile(p)).toBeCloseTo(normalQuantileReference(p, 0, 1), 10);
        expect(normalCdf(normalQuantile(p))).toBeCloseTo(p, 13);
      }),
    );
  });

  it("keeps the ends and the middle", () => {
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity]);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 15);
    expect([normalCdf(-Infinity), normalCdf(Infinity)]).toEqual([0, 1]);
    expect(normalDensity(0)).toBeCloseTo(0.3989422804014327, 15); // Abramowitz and Stegun, table 26.1
    expect(() => normalCdf(NaN)).toThrow(RangeError);
  });
});

describe("chi-squared distribution", () => {
  it.each([
    // Source: SciPy 1.17.1, scipy.stats.chi2.ppf; 3.841 and 13.277 are in every printed table.
    [0.95, 1, 3.841458820694124],
    [0.99, 4, 13.276704135987622],
    [0.01, 10, 2.5582121601872063],
    [0.5, 200, 199.33372983863097],
    [1e-6, 3, 0.00024181048720124264],
  ])("quantile at %s with %i degrees", (p, degrees, wanted) =>
    expectRelative(chiSquaredQuantile(p, degrees), wanted, 1e-11),
  );

  it.each([
    // Source: SciPy 1.17.1, scipy.stats.chi2.sf.
    [3.84, 1, 0.05004352124870519],
    [80, 4, 1.7418252446695558e-16],
    [150, 200, 0.996647558501813],
  ])("share above %s with %i degrees", (x, degrees, wanted) =>
    expectRelative(chiSquaredUpperTail(x, degrees), wanted),
  );

  it("agrees with @stdlib, and with squared normal deviates", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 200, noNaN: true }),
        fc.integer({ min: 1, max: 80 }),
        (x, degrees) => {
          expect(chiSquaredCdf(x, degrees)).toBeCloseTo(chiSquaredCdfReference(x, degrees), 11);
          expect(chiSquaredUpperTail(x, 1)).toBeCloseTo(2 * normalCdf(-Math.sqrt(x)), 13);
        },
      ),
    );
    expect(chiSquaredQuantile(0, 3)).toBe(0);
    expect(() => chiSquaredCdf(-1, 3)).toThrow(RangeError);
    expect(() => chiSquaredCdf(1, 0)).toThrow(RangeError);
  });
});

describe("binomial distribution", () => {
  it("gives the throws of three coins", () => {
    // Counted by hand: 1, 3, 3, 1 of 8.
    expect([0, 1, 2, 3].map((heads) => binomialCdf(heads, 3, 0.5))).toEqual([
      expect.closeTo(1 / 8, 14),
      expect.closeTo(4 / 8, 14),
      expect.closeTo(7 / 8, 14),
      1,
    ]);
    expect([0, 1, 2, 3, 4].map((heads) => binomialUpperTail(heads, 3, 0.5))).toEqual([
      1,
      expect.closeTo(7 / 8, 14),
      expect.closeTo(4 / 8, 14),
      expect.closeTo(1 / 8, 14),
      0,
    ]);
    expect(binomialCdf(-1, 3, 0.5)).toBe(0);
  });

  it("keeps a tiny upper tail", () => {
    // Source: SciPy 1.17.1, scipy.stats.binom.sf(2, 20, 1e-9); to first order 1140 rate^3.
    expectRelative(binomialUpperTail(3, 20, 1e-9), 1.1399999854650016e-24);
  });

  it("agrees with @stdlib", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.nat(300), fraction, (trials, events, rate) => {
        fc.pre(events <= trials);
        expect(binomialCdf(events, trials, rate)).toBeCloseTo(binomialCdfReference(events, trials, rate), 10);
        expect(binomialCdf(events, trials, rate) + binomialUpperTail(events + 1, trials, rate)).toBeCloseTo(
          1,
          10,
        );
      }),
    );
  });

  it("refuses broken counts", () => {
    expect(() => binomialCdf(0.5, 2, 0.5)).toThrow(RangeError);
    expect(() => binomialUpperTail(1, -2, 0.5)).toThrow(RangeError);
  });
});
