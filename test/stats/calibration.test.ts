import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import {
  applyPlatt,
  fitPlatt,
  fitTemperature,
  fitTemperatureOfLabels,
  isotonicRegression,
  LARGEST_TEMPERATURE,
  LEAST_TEMPERATURE,
  plattTargets,
} from "../../src/stats/calibration.js";
import { fitPulledPlatt } from "../../src/stats/pulledPlatt.js";
import {
  logit,
  sigmoid,
  slopeWithinMargin,
  softmax,
  softplus,
  withinMargin,
} from "../../src/stats/logistic.js";
import { logLoss } from "../../src/stats/scores.js";

const SCORES = [-2.1, -1.3, -0.7, -0.2, 0.1, 0.4, 0.9, 1.6, 2.2, -0.5];
const HAPPENED = [0, 0, 0, 1, 0, 1, 1, 1, 1, 0];

describe("logistic pieces", () => {
  it("softens and sharpens as computed elsewhere", () => {
    // Source: SciPy 1.17.1, scipy.special.softmax of [2, 1, 0.1] at temperatures 1, 2 and 0.5.
    const wanted = [
      [1, [0.659, 0.24243, 0.09857]],
      [2, [0.50169, 0.30429, 0.19402]],
      [0.5, [0.86378, 0.1169, 0.01932]],
    ] as const;
    for (const [temperature, shares] of wanted)
      softmax([2, 1, 0.1], temperature).forEach((p, at) => expect(p).toBeCloseTo(shares[at]!, 5));
  });

  it("neither overflows nor forgets its mirror", () => {
    expect([sigmoid(1000), sigmoid(-1000), softplus(1000), softplus(-1000)]).toEqual([1, 0, 1000, 0]);
    expect([...softmax([1000, 1000])]).toEqual([0.5, 0.5]);
    fc.assert(
      fc.property(fc.double({ min: -30, max: 30, noNaN: true }), (x) => {
        expect(sigmoid(x) + sigmoid(-x)).toBeCloseTo(1, 14);
        expect(softplus(x) - softplus(-x)).toBeCloseTo(x, 12);
        if (Math.abs(x) < 15) expect(logit(sigmoid(x))).toBeCloseTo(x, 8);
        expect(softmax([0, x])[1]).toBeCloseTo(sigmoid(x), 14);
      }),
    );
    expect([logit(0), logit(1)]).toEqual([-Infinity, Infinity]);
  });

  it("keeps a margin from either end, and leaves alone what lies three of them off", () => {
    // By hand: a parabola from (0, 0.02) that joins the diagonal at 0.06, there with its slope of 1.
    const wanted = [
      [0, 0.02],
      [0.03, 0.035],
      [0.06, 0.06],
      [0.3, 0.3],
      [0.97, 0.965],
      [1, 0.98],
    ] as const;
    for (const [probability, kept] of wanted) expect(withinMargin(probability, 0.02)).toBeCloseTo(kept, 14);
    expect([0, 0.3, 1].map((probability) => withinMargin(probability, 0))).toEqual([0, 0.3, 1]);
    expect([0, 0.3, 1].map((probability) => withinMargin(probability, 0.5))).toEqual([0.5, 0.5, 0.5]);
  });

  it("has within its margin the slope of its chord, and no corner but in the middle", () => {
    const fraction = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(fraction, fc.double({ min: 0, max: 0.5, noNaN: true }), (probability, margin) => {
        fc.pre(Math.abs(probability - 0.5) > 1e-6);
        const rise = withinMargin(probability + 1e-7, margin) - withinMargin(probability - 1e-7, margin);
        // Coarse enough for a chord over the end of the parabola.
        expect(slopeWithinMargin(probability, margin)).toBeCloseTo(rise / 2e-7, 4);
      }),
    );
  });

  it("refuses what is no probability, no logit, no temperature", () => {
    expect(() => logit(50)).toThrow(RangeError);
    expect(() => softmax([])).toThrow(RangeError);
    expect(() => softmax([1], 0)).toThrow(RangeError);
  });
});

describe("Platt's map", () => {
  it("smooths the targets", () => {
    // Source: Platt (1999), section 2.2; fractions by hand: 4/5, 1/9, 11/12, 1/92.
    expect(plattTargets(3, 7)).toEqual({ positive: 4 / 5, negative: 1 / 9 });
    expect(plattTargets(10, 90)).toEqual({ positive: 11 / 12, negative: 1 / 92 });
    expect(plattTargets(0, 0)).toEqual({ positive: 0.5, negative: 0.5 });
    expect(() => plattTargets(-1, 2)).toThrow(RangeError);
  });

  it("is scikit-learn's", () => {
    // Source: scikit-learn 1.9.1, calibration._SigmoidCalibration, which stops near 1e-6.
    const map = fitPlatt(SCORES, HAPPENED);
    expect(map.slope).toBeCloseTo(1.1960213, 5);
    expect(map.intercept).toBeCloseTo(-0.025254, 5);
  });

  it("stands where the loss is flat", () => {
    const { positive, negative } = plattTargets(5, 5);
    const map = fitPlatt(SCORES, HAPPENED);
    const pull = SCORES.map(
      (score, at) => applyPlatt(map, score) - (HAPPENED[at] === 1 ? positive : negative),
    );
    expect(pull.reduce((a, b) => a + b, 0)).toBeCloseTo(0, 9);
    expect(pull.reduce((sum, one, at) => sum + one * SCORES[at]!, 0)).toBeCloseTo(0, 9);
  });

  it("follows a shift and a scale of the score", () => {
    const there = fitPlatt(
      SCORES.map((score) => 10 - 4 * score),
      HAPPENED,
    );
    const here = fitPlatt(SCORES, HAPPENED);
    SCORES.forEach((score) =>
      expect(applyPlatt(there, 10 - 4 * score)).toBeCloseTo(applyPlatt(here, score), 8),
    );
  });

  it("stays finite where scores separate perfectly, or there is one outcome only, or one score", () => {
    const apart = fitPlatt([-2, -1, 1, 2], [0, 0, 1, 1]);
    expect(applyPlatt(apart, 2)).toBeLessThan(1);
    expect(applyPlatt(apart, 2)).toBeGreaterThan(0.7);
    // By hand: three events and nothing else pull every probability to the target 4/5.
    expect(applyPlatt(fitPlatt([1, 2, 3], [1, 1, 1]), 2)).toBeCloseTo(0.8, 8);
    // By hand: with one score, the mean of the targets, (3/4 * 2 + 1/3) / 3.
    expect(applyPlatt(fitPlatt([5, 5, 5], [1, 1, 0]), 5)).toBeCloseTo((1.5 + 1 / 3) / 3, 7);
  });

  it("finds the map that made the outcomes", () => {
    const random = seededRandom(3);
    const scores = Array.from({ length: 20_000 }, () => standardNormal(random));
    const happened = scores.map((score) => (random() < sigmoid(2 * score - 1) ? 1 : 0));
    const map = fitPlatt(scores, happened);
    expect(map.slope).toBeCloseTo(2, 1);
    expect(map.intercept).toBeCloseTo(-1, 1);
  });

  it("refuses a score that is not finite", () => {
    expect(() => fitPlatt([1, Infinity], [0, 1])).toThrow(RangeError);
    expect(() => fitPlatt([], [])).toThrow(RangeError);
    expect(() => fitPlatt([1], [0, 1])).toThrow(RangeError);
  });
});

describe("temperature", () => {
  const logits = [
    [2, 1, 0.1],
    [1.5, 1.4, 0],
    [0, 3, 0.5],
    [0.2, 0.1, 0.3],
    [4, 1, 0],
    [1, 2, 2.5],
    [3, 0, 1],
    [0, 2, 1.8],
  ];
  const labels = [0, 1, 1, 2, 0, 1, 2, 2];

  it("of eight cases with three labels is as computed with SciPy", () => {
    // Source: SciPy 1.17.1, optimize.minimize_scalar; method of Guo and others, arXiv 1706.04599, section 4.2.
    const temperature = fitTemperatureOfLabels(logits, labels);
    const lossAt = (t: number) =>
      logits.reduce((sum, row, at) => sum - Math.log(softmax(row, t)[labels[at]!]!), 0) / logits.length;
    expect(temperature).toBeCloseTo(1.202051, 6);
    expect(lossAt(1)).toBeCloseTo(0.825973, 6);
    expect(lossAt(temperature)).toBeCloseTo(0.819025, 6);
  });

  it("of log-odds is as computed with SciPy, and as of two labels", () => {
    // Source: SciPy 1.17.1, optimize.minimize_scalar over ln T.
    const temperature = fitTemperature(SCORES, HAPPENED);
    expect(temperature).toBeCloseTo(0.248163942, 6);
    const pairs = SCORES.map((score) => [0, score]);
    expect(fitTemperatureOfLabels(pairs, HAPPENED)).toBeCloseTo(temperature, 9);
    const probabilities = SCORES.map((score) => sigmoid(score / temperature));
    expect(logLoss(probabilities, HAPPENED)).toBeCloseTo(0.24884188499459442, 10);
  });

  it("counts a case of weight 2 like the same case twice, and forgets one of weight 0", () => {
    const twice = fitTemperature([...SCORES, SCORES[3]!], [...HAPPENED, HAPPENED[3]!]);
    const weight = SCORES.map((_, i) => (i === 3 ? 2 : 1));
    expect(fitTemperature(SCORES, HAPPENED, { weight })).toBeCloseTo(twice, 9);
    const without = fitTemperature(SCORES.slice(1), HAPPENED.slice(1));
    const silent = SCORES.map((_, i) => (i === 0 ? 0 : 1));
    expect(fitTemperature(SCORES, HAPPENED, { weight: silent })).toBeCloseTo(without, 9);
    expect(() => fitTemperature(SCORES, HAPPENED, { weight: [1] })).toThrow(RangeError);
  });

  it("pulled, minimises the loss with the pull in it, and ends at 1", () => {
    const lossAt = (sharpness: number, pull: number) =>
      SCORES.reduce(
        (sum, score, i) => sum + softplus(sharpness * score) - HAPPENED[i]! * sharpness * score,
        0,
      ) +
      (pull / 2) * (sharpness - 1) ** 2;
    for (const pull of [0.5, 5, 50]) {
      const sharpness = 1 / fitTemperature(SCORES, HAPPENED, { pull });
      for (const step of [-0.01, 0.01])
        expect(lossAt(sharpness + step, pull)).toBeGreaterThan(lossAt(sharpness, pull));
    }
    expect(fitTemperature(SCORES, HAPPENED, { pull: 1e6 })).toBeCloseTo(1, 5);
    expect(() => fitTemperature(SCORES, HAPPENED, { pull: -1 })).toThrow(RangeError);
  });

  it("with a margin, minimises the loss of what is left after it, and heeds only the cases that come near it", () => {
    const lossAt = (sharpness: number, margin: number) =>
      SCORES.reduce((sum, score, i) => {
        const probability = withinMargin(sigmoid(sharpness * score), margin);
        return sum - Math.log(HAPPENED[i] === 1 ? probability : 1 - probability);
      }, 0);
    for (const one of [0.001, 0.01, 0.03]) {
      const margin = SCORES.map(() => one);
      const sharpness = 1 / fitTemperature(SCORES, HAPPENED, { margin });
      for (const step of [-0.01, 0.01])
        expect(lossAt(sharpness + step, one)).toBeGreaterThan(lossAt(sharpness, one));
    }
    // Held near 1, the surest case has sigmoid(2.2) = 0.90, three margins of 0.033 from the end.
    const held = (one: number) =>
      fitTemperature(SCORES, HAPPENED, { margin: SCORES.map(() => one), pull: 1e3 });
    expect(held(0.03)).toBeCloseTo(held(0), 12);
    expect(held(0.04)).not.toBeCloseTo(held(0), 8);
    const none = SCORES.map(() => 0);
    expect(fitTemperature(SCORES, HAPPENED, { margin: none })).toBe(fitTemperature(SCORES, HAPPENED));
    for (const margin of [[0.1], none.map(() => 0.6), none.map(() => NaN)])
      expect(() => fitTemperature(SCORES, HAPPENED, { margin })).toThrow(RangeError);
  });

  it("scales with the logits", () => {
    const doubled = SCORES.map((score) => 2 * score);
    expect(fitTemperature(doubled, HAPPENED)).toBeCloseTo(2 * fitTemperature(SCORES, HAPPENED), 8);
  });

  it("stops at its limits where the logits are all right, or all wrong", () => {
    expect(fitTemperature([-3, 3], [0, 1])).toBe(LEAST_TEMPERATURE);
    expect(fitTemperature([-3, 3], [1, 0])).toBe(LARGEST_TEMPERATURE);
  });

  it("refuses rows without a label and labels without a logit", () => {
    expect(() => fitTemperatureOfLabels(logits, [0])).toThrow(RangeError);
    expect(() => fitTemperatureOfLabels([], [])).toThrow(RangeError);
    expect(() => fitTemperatureOfLabels([[1, 2]], [2])).toThrow(RangeError);
  });
});

describe("isotonic regression", () => {
  it.each([
    // Source: R 4.2.2, isoreg; the first is its help example.
    [
      [1, 0, 4, 3, 3, 5, 4, 2, 0],
      [0.5, 0.5, 3, 3, 3, 3, 3, 3, 3],
    ],
    [
      [0, 0, 1, 0, 1, 1, 0, 1],
      [0, 0, 0.5, 0.5, 2 / 3, 2 / 3, 2 / 3, 1],
    ],
    [
      [1, 2, 3, 3, 1, 6, 7, 8, 11, 9, 10, 12],
      [1, 2, 7 / 3, 7 / 3, 7 / 3, 6, 7, 8, 10, 10, 10, 12],
    ],
  ])("pools %j", (y, wanted) => {
    isotonicRegression(y).forEach((value, at) => expect(value).toBeCloseTo(wanted[at]!, 12));
  });

  it("heeds weights as scikit-learn does", () => {
    // Source: scikit-learn 1.9.1, isotonic.IsotonicRegression.
    const fitted = isotonicRegression([1, 4, 2, 2, 6, 3], [1, 2, 3, 1, 0.5, 2]);
    [1, 8 / 3, 8 / 3, 8 / 3, 3.6, 3.6].forEach((value, at) => expect(fitted[at]).toBeCloseTo(value, 12));
  });

  it("never falls, keeps the sum, leaves a rising row alone, and is settled at once", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { maxLength: 30 }), (y) => {
        const fitted = isotonicRegression(y);
        const again = isotonicRegression(fitted);
        for (let i = 1; i < fitted.length; i += 1) expect(fitted[i]).toBeGreaterThanOrEqual(fitted[i - 1]!);
        expect(fitted.reduce((a, b) => a + b, 0)).toBeCloseTo(
          y.reduce((a, b) => a + b, 0),
          9,
        );
        again.forEach((value, i) => expect(value).toBeCloseTo(fitted[i]!, 12));
        const rising = y.toSorted((a, b) => a - b);
        isotonicRegression(rising).forEach((value, i) => expect(value).toBeCloseTo(rising[i]!, 12));
      }),
    );
  });

  it("takes a whole weight for that many copies", () => {
    const weighted = isotonicRegression([3, 1, 2], [1, 2, 1]);
    const copied = isotonicRegression([3, 1, 1, 2]);
    expect([weighted[0], weighted[1], weighted[2]]).toEqual([copied[0], copied[1], copied[3]]);
  });

  it("refuses weights that do not fit", () => {
    expect(() => isotonicRegression([1, 2], [1])).toThrow(RangeError);
    expect(() => isotonicRegression([1, 2], [1, 0])).toThrow(RangeError);
    expect([...isotonicRegression([])]).toEqual([]);
  });
});

describe("Platt's map pulled to doing nothing", () => {
  it("scikit-learn 1.9.1: LogisticRegression with C = 1e6 finds the same map where nothing pulls", () => {
    // Source: that program on SCORES and HAPPENED, tol 1e-10: coefficient 4.0818, intercept 0.1394.
    const { slope, intercept } = fitPulledPlatt(SCORES, HAPPENED, 1e-6);
    expect(slope).toBeCloseTo(4.0818, 3);
    expect(intercept).toBeCloseTo(0.1394, 3);
  });

  it("a strong pull changes nothing, and every pull lies between that and the free fit", () => {
    const strong = fitPulledPlatt(SCORES, HAPPENED, 1e6);
    expect(strong.slope).toBeCloseTo(1, 4);
    expect(strong.intercept).toBeCloseTo(0, 4);
    const slopes = [1e-6, 0.1, 1, 10, 1e6].map((pull) => fitPulledPlatt(SCORES, HAPPENED, pull).slope);
    expect(slopes).toEqual([...slopes].sort((a, b) => b - a));
  });

  it.each([0.1, 1, 10, 100])("no map nearby fits better under the same pull: %d", (pull) => {
    const lossAt = (slope: number, intercept: number) =>
      SCORES.reduce(
        (sum, score, i) =>
          sum + softplus(slope * score + intercept) - HAPPENED[i]! * (slope * score + intercept),
        (pull / 2) * ((slope - 1) ** 2 + intercept ** 2),
      );
    const { slope, intercept } = fitPulledPlatt(SCORES, HAPPENED, pull);
    for (const [dx, dy] of [
      [0.001, 0],
      [-0.001, 0],
      [0, 0.001],
      [0, -0.001],
    ])
      expect(lossAt(slope + dx!, intercept + dy!)).toBeGreaterThan(lossAt(slope, intercept));
  });

  it("stays finite where the scores part the outcomes without a mistake", () => {
    const { slope, intercept } = fitPulledPlatt([-2, -1, 1, 2], [0, 0, 1, 1], 1);
    expect(Number.isFinite(slope) && slope > 1 && slope < 10).toBe(true);
    expect(intercept).toBeCloseTo(0, 9);
  });

  it("mirrored scores and outcomes give the mirrored map", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.double({ min: -6, max: 6, noNaN: true }), fc.boolean()), { minLength: 3 }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (cases, pull) => {
          const scores = cases.map(([score]) => score);
          const happened = cases.map(([, one]) => Number(one));
          const one = fitPulledPlatt(scores, happened, pull);
          const mirrored = fitPulledPlatt(
            scores.map((score) => -score),
            happened.map((value) => 1 - value),
            pull,
          );
          expect(mirrored.slope).toBeCloseTo(one.slope, 5);
          expect(mirrored.intercept).toBeCloseTo(-one.intercept, 5);
        },
      ),
    );
  });

  it("refuses a pull below 0 and lists of unlike length", () => {
    expect(() => fitPulledPlatt([1], [1], -1)).toThrow(RangeError);
    expect(() => fitPulledPlatt([1, 2], [1], 1)).toThrow(RangeError);
  });
});
