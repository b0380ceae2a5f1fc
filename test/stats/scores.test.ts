import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  areaUnderRiskCoverage,
  balancedAccuracy,
  brierDecomposition,
  brierScore,
  expectedCalibrationError,
  logLoss,
  maximumCalibrationError,
  riskCoverage,
  rocAuc,
  toConfidence,
} from "../../src/stats/scores.js";

const PREDICTED = [0.1, 0.4, 0.35, 0.8, 0.65, 0.65, 0.2, 0.9];
const HAPPENED = [0, 0, 1, 1, 1, 0, 0, 1];

const cases = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 19 }), fc.constantFrom(0, 1)), { minLength: 1, maxLength: 40 })
  .map((pairs) => ({ predicted: pairs.map(([p]) => p / 20), happened: pairs.map(([, o]): number => o) }));

describe("log loss and Brier score", () => {
  it("are scikit-learn's", () => {
    // Source: scikit-learn 1.9.1, metrics.log_loss and brier_score_loss: run on these lists, and the last two lines
    // on the lists of its own docstring examples.
    expect(logLoss(PREDICTED, HAPPENED)).toBeCloseTo(0.46228261534998405, 13);
    expect(brierScore(PREDICTED, HAPPENED)).toBeCloseTo(0.1534375, 13);
    expect(logLoss([0.9, 0.1, 0.2, 0.65], [1, 0, 0, 1])).toBeCloseTo(0.21616187468057912, 13);
    expect(brierScore([0.1, 0.9, 0.8, 0.3], [0, 1, 1, 0])).toBeCloseTo(0.0375, 13);
  });

  it("punishes certainty that fails, but not without end", () => {
    expect(logLoss([0], [1])).toBeCloseTo(-Math.log(1e-15), 10); // by hand from the clip
    expect(logLoss([1], [0])).toBeCloseTo(-Math.log(1e-15), 0); // 1 - 1e-15 is rounded to the nearest double
    expect(logLoss([0.5], [1])).toBeCloseTo(Math.LN2, 14);
    expect(brierScore([0.7], [1])).toBeCloseTo(0.09, 14); // by hand
  });

  it("reads the same when present and absent change names", () => {
    fc.assert(
      fc.property(cases, ({ predicted, happened }) => {
        const turned = predicted.map((p) => 1 - p);
        const other = happened.map((o) => 1 - o);
        expect(logLoss(turned, other)).toBeCloseTo(logLoss(predicted, happened), 12);
        expect(brierScore(turned, other)).toBeCloseTo(brierScore(predicted, happened), 12);
      }),
    );
  });
});

describe("Murphy's decomposition", () => {
  const forecasts = [
    ...Array<number>(5).fill(0.1),
    ...Array<number>(10).fill(0.3),
    ...Array<number>(5).fill(0.8),
  ];
  const outcomes = [0, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 0];

  it("splits a small example as by hand", () => {
    // By hand: shares 1/5, 3/10, 4/5 against 0.1, 0.3, 0.8; base rate 8/20.
    // Form: Murphy, J. Applied Meteorology 12 (1973), 595-600.
    const parts = brierDecomposition(forecasts, outcomes);
    expect(parts.brier).toBeCloseTo(0.1875, 14);
    expect(parts.reliability).toBeCloseTo(0.0025, 14);
    expect(parts.resolution).toBeCloseTo(0.055, 14);
    expect(parts.uncertainty).toBeCloseTo(0.24, 14);
    expect(parts.baseRate).toBeCloseTo(0.4, 14);
    expect(expectedCalibrationError(forecasts, outcomes)).toBeCloseTo(0.025, 14);
  });

  it("adds up to the Brier score, whatever is forecast", () => {
    fc.assert(
      fc.property(cases, ({ predicted, happened }) => {
        const { brier, reliability, resolution, uncertainty } = brierDecomposition(predicted, happened);
        expect(brier).toBeCloseTo(brierScore(predicted, happened), 12);
        expect(reliability - resolution + uncertainty).toBeCloseTo(brier, 12);
        expect(Math.min(reliability, resolution)).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe("calibration error", () => {
  // By hand, ten bins (lo, hi]: 3, 3, 4, 4 and 6 answers with gaps 0.2167, 0.3133, 0.0025, 0.09 and 0.1117.
  const confidence = [
    0.95, 0.92, 0.97, 0.91, 0.85, 0.82, 0.88, 0.72, 0.75, 0.78, 0.65, 0.61, 0.55, 0.58, 0.99, 0.93, 0.81,
    0.74, 0.68, 0.52,
  ];
  const correct = [1, 1, 1, 0, 1, 1, 0, 1, 0, 1, 1, 0, 1, 0, 1, 1, 1, 1, 0, 0];

  it("weighs the gap of each bin by its sniffs", () => {
    expect(expectedCalibrationError(confidence, correct)).toBeCloseTo(0.1315, 12);
    expect(maximumCalibrationError(confidence, correct)).toBeCloseTo(0.3133, 4);
  });

  it("is nought for a forecaster who is right, and at most the largest gap", () => {
    expect(expectedCalibrationError([0.25, 0.25, 0.25, 0.25], [0, 1, 0, 0])).toBe(0);
    fc.assert(
      fc.property(cases, fc.integer({ min: 1, max: 15 }), ({ predicted, happened }, binCount) => {
        const expected = expectedCalibrationError(predicted, happened, binCount);
        expect(expected).toBeLessThanOrEqual(maximumCalibrationError(predicted, happened, binCount) + 1e-12);
      }),
    );
  });

  it("turns a probability of present into confidence in the answer", () => {
    const turned = toConfidence([0.2, 0.9, 0.5, 0.5, 0.4], [0, 0, 1, 0, 1]);
    expect([...turned.confidence]).toEqual([0.8, 0.9, 0.5, 0.5, 0.6]);
    expect([...turned.correct]).toEqual([1, 0, 1, 0, 0]); // by hand
  });
});

describe("area under the ROC curve", () => {
  it("is scikit-learn's, ties included", () => {
    // Source: scikit-learn 1.9.1, metrics.roc_auc_score; 0.75 is its docstring example.
    expect(rocAuc(PREDICTED, HAPPENED)).toBeCloseTo(0.84375, 14);
    expect(rocAuc([0.1, 0.4, 0.35, 0.8], [0, 0, 1, 1])).toBe(0.75);
  });

  it("counts pairs", () => {
    fc.assert(
      fc.property(cases, ({ predicted, happened }) => {
        let [won, pairs] = [0, 0];
        predicted.forEach((p, i) =>
          predicted.forEach((q, j) => {
            if (happened[i] !== 1 || happened[j] !== 0) return;
            pairs += 1;
            won += p > q ? 1 : p === q ? 0.5 : 0;
          }),
        );
        const auc = rocAuc(predicted, happened);
        if (pairs === 0) expect(auc).toBeNull();
        else expect(auc).toBeCloseTo(won / pairs, 12);
      }),
    );
  });

  it("cares for the order only, and turns over with the sign", () => {
    fc.assert(
      fc.property(cases, ({ predicted, happened }) => {
        const auc = rocAuc(predicted, happened);
        fc.pre(auc !== null);
        const stretched = predicted.map((p) => Math.exp(5 * p) - 100);
        const turned = predicted.map((p) => -p);
        expect(rocAuc(stretched, happened)).toBeCloseTo(auc!, 12);
        expect(rocAuc(turned, happened)).toBeCloseTo(1 - auc!, 12);
      }),
    );
  });

  it("takes endless scores, and refuses holes", () => {
    expect(rocAuc([-Infinity, Infinity], [0, 1])).toBe(1);
    expect(rocAuc([Infinity, Infinity], [0, 1])).toBe(0.5);
    expect(() => rocAuc([NaN, 1], [0, 1])).toThrow(RangeError);
  });
});

describe("balanced accuracy", () => {
  it("is scikit-learn's, with unequal sizes", () => {
    // Source: scikit-learn 1.9.1, metrics.balanced_accuracy_score; 0.625 is its docstring example.
    expect(balancedAccuracy([0, 1, 0, 0, 0, 1], [0, 1, 0, 0, 1, 0])).toBe(0.625);
    expect(balancedAccuracy([1, 1, 1, 1], [1, 1, 1, 0])).toBe(0.5);
    expect(balancedAccuracy([1, 1], [1, 1])).toBeNull();
  });
});

describe("risk against coverage", () => {
  it("counts a small example by hand", () => {
    expect(riskCoverage([0.9, 0.6, 0.8, 0.6], [0, 1, 1, 0])).toEqual([
      { leastConfidence: 0.9, coverage: 0.25, risk: 0 },
      { leastConfidence: 0.8, coverage: 0.5, risk: 0.5 },
      { leastConfidence: 0.6, coverage: 1, risk: 0.5 },
    ]);
    expect(areaUnderRiskCoverage(riskCoverage([0.9, 0.6, 0.8, 0.6], [0, 1, 1, 0]))).toBe(0.375);
  });

  it("ends at full coverage with the plain error rate, whatever the order", () => {
    fc.assert(
      fc.property(cases, ({ predicted, happened }) => {
        const points = riskCoverage(predicted, happened);
        const errors = happened.reduce((a, b) => a + b, 0);
        expect(points.at(-1)?.coverage).toBe(1);
        expect(points.at(-1)?.risk).toBeCloseTo(errors / happened.length, 12);
        expect(points).toHaveLength(new Set(predicted).size);
        expect(riskCoverage(predicted.toReversed(), happened.toReversed())).toEqual(points);
      }),
    );
  });

  it("refuses a hole", () => expect(() => riskCoverage([NaN], [0])).toThrow(RangeError));
});

it.each([
  ["a per cent value", [70], [1]],
  ["no cases", [], []],
  ["unequal lengths", [0.1, 0.2], [1]],
  ["an outcome of 2", [0.1], [2]],
])("refuses %s", (_what, predicted, happened) => {
  for (const score of [logLoss, brierScore, brierDecomposition, expectedCalibrationError, toConfidence])
    expect(() => score(predicted, happened)).toThrow(RangeError);
});

it.each([
  ["no cases", [], []],
  ["unequal lengths", [0.1, 0.2], [1]],
  ["an outcome of 2", [0.1], [2]],
])("ranks neither %s", (_what, scores, happened) => {
  for (const score of [rocAuc, riskCoverage, balancedAccuracy])
    expect(() => score(scores, happened)).toThrow(RangeError);
});
