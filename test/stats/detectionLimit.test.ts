import { describe, expect, it } from "vitest";
import {
  currieLimits,
  type DoseTrial,
  fitProbit,
  fitSingleHit,
  threeSigmaLimit,
} from "../../src/stats/detectionLimit.js";
import { normalCdf } from "../../src/stats/normal.js";

describe("limits over a blank", () => {
  it("are Currie's", () => {
    // Source: Currie, Anal. Chem. 40 (1968), 586-593 (values from memory): 2.326, 4.652, 1.645, 3.29 sigma.
    const paired = currieLimits(1, "paired");
    expect(paired.critical).toBeCloseTo(2.326, 3);
    expect(paired.detection).toBeCloseTo(4.652, 3);
    const known = currieLimits(2, "wellKnown");
    expect(known.critical / 2).toBeCloseTo(1.645, 3);
    expect(known.detection / 2).toBeCloseTo(3.29, 3);
  });

  it("part false alarms from misses", () => {
    const limits = currieLimits(1, "wellKnown", 0.01, 0.1);
    expect(1 - normalCdf(limits.critical)).toBeCloseTo(0.01, 10);
    expect(normalCdf(limits.critical - limits.detection)).toBeCloseTo(0.1, 10);
  });

  it("follow the three-sigma rule", () => {
    // Source: NumPy 2.4.6, mean and std(ddof=1); mean 10 and standard deviation 0.182574 of ten blanks.
    const blank = [10.1, 9.8, 10.3, 10, 9.9, 10.2, 9.7, 10, 10.1, 9.9];
    expect(threeSigmaLimit(blank, 2.5).signal).toBeCloseTo(10.547723, 6);
    expect(threeSigmaLimit(blank, 2.5).dose).toBeCloseTo(0.219089, 6);
    // A sensor whose resistance falls with the dose has its limit below the blank.
    expect(threeSigmaLimit(blank, -2.5).signal).toBeCloseTo(20 - 10.547723, 6);
    expect(threeSigmaLimit(blank, -2.5).dose).toBeCloseTo(0.219089, 6);
    expect(1 - normalCdf(3)).toBeCloseTo(0.00135, 5); // every printed table
  });

  it("refuse what is out of range", () => {
    expect(() => currieLimits(0, "paired")).toThrow(RangeError);
    expect(() => currieLimits(1, "paired", 5)).toThrow(RangeError);
    expect(() => threeSigmaLimit([1], 1)).toThrow(RangeError);
    expect(() => threeSigmaLimit([1, 2], 0)).toThrow(RangeError);
  });
});

describe("detection against dose", () => {
  const trial = (dose: number, trials: number, detected: number): DoseTrial => ({ dose, trials, detected });
  // Maximum likelihood on twenty trials at each of five doses. Source: SciPy 1.17.1, optimize.brentq, for the
  // single-hit model; statsmodels 0.15.0, GLM with the probit link, for the other.
  const five = [trial(0.5, 20, 4), trial(1, 20, 8), trial(2, 20, 13), trial(4, 20, 18), trial(8, 20, 20)];

  it("fits the single-hit model", () => {
    const fit = fitSingleHit(five);
    expect(fit?.rate).toBeCloseTo(0.54385, 5);
    expect(fit?.lod50).toBeCloseTo(1.2745, 4);
    expect(fit?.lod95).toBeCloseTo(5.5083, 4);
    // Source: ISO 16140-2 (value from memory): ln 20 / ln 2.
    expect(fit!.lod95 / fit!.lod50).toBeCloseTo(4.3219, 4);
  });

  it("fits the probit model", () => {
    const fit = fitProbit(five);
    expect(fit?.intercept).toBeCloseTo(-0.21796, 4);
    expect(fit?.slope).toBeCloseTo(2.49862, 4);
    expect(fit?.lod50).toBeCloseTo(1.2225, 4);
    expect(fit?.lod95).toBeCloseTo(5.5659, 4);
  });

  it("scales with the unit of the dose, and reads a split row as one", () => {
    const grams = five.map((one) => ({ ...one, dose: one.dose * 1000 }));
    expect(fitSingleHit(grams)!.lod50).toBeCloseTo(1000 * fitSingleHit(five)!.lod50, 6);
    expect(fitProbit(grams)!.lod95).toBeCloseTo(1000 * fitProbit(five)!.lod95, 3);
    const split = [...five.slice(1), trial(0.5, 15, 1), trial(0.5, 5, 3)];
    expect(fitSingleHit(split)!.rate).toBeCloseTo(fitSingleHit(five)!.rate, 10);
  });

  it("hits one dose exactly", () => {
    // By hand: 5 of 10 at dose 3 means LOD50 = 3.
    expect(fitSingleHit([trial(3, 10, 5)])?.lod50).toBeCloseTo(3, 10);
  });

  it("gives no limit where the trials do not fix one", () => {
    expect(fitSingleHit([trial(1, 10, 0), trial(2, 10, 0)])).toBeNull();
    expect(fitSingleHit([trial(1, 10, 10)])).toBeNull();
    expect(fitProbit([trial(1, 10, 0)])).toBeNull();
    expect(fitProbit([trial(3, 10, 5)])).toBeNull();
    expect(fitProbit([trial(1, 10, 0), trial(2, 10, 10)])).toBeNull();
    expect(fitProbit([trial(1, 10, 8), trial(2, 10, 5), trial(4, 10, 2)])).toBeNull();
  });

  it("refuses broken trials", () => {
    for (const bad of [trial(0, 10, 5), trial(1, 10, 11), trial(1, 2.5, 1), trial(1, 10, -1)]) {
      expect(() => fitSingleHit([bad])).toThrow(RangeError);
      expect(() => fitProbit([bad])).toThrow(RangeError);
    }
  });
});
