import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cusumChart, ewmaChart, ewmaHalfWidth, type EwmaPlan } from "../../src/stats/controlChart.js";

const readings = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 1, maxLength: 40 });

describe("EWMA chart", () => {
  const plan: EwmaPlan = { target: 50, sigma: 2.0539, weight: 0.3, limitInSigma: 3 };
  const y = [
    52, 47, 53, 49.3, 50.1, 47, 51, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6,
    52.1,
  ];

  it("follows the handbook's example", () => {
    // Source: NIST/SEMATECH e-Handbook, section 6.3.2.4 (value from memory, recomputed elsewhere).
    const wanted = [
      50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38,
      49.92, 50.73, 51.23, 51.94, 51.99,
    ];
    const chart = ewmaChart(y, plan);
    chart.forEach((point, at) => expect(point.average).toBeCloseTo(wanted[at]!, 2));
    expect(chart.some((point) => point.outside)).toBe(false);
    expect(plan.target + ewmaHalfWidth(plan, Infinity)).toBeCloseTo(52.5884, 4);
    expect(plan.target - ewmaHalfWidth(plan, Infinity)).toBeCloseTo(47.4116, 4);
  });

  it("opens its limits step by step", () => {
    // Source: exact variance of the average, Lucas and Saccucci (1990); numbers from plain Python.
    const unit: EwmaPlan = { target: 0, sigma: 1, weight: 0.2, limitInSigma: 3 };
    const wanted = { 1: 0.6, 2: 0.7684, 3: 0.859, 5: 0.9448, 10: 0.9942, 30: 1 };
    for (const [count, half] of Object.entries(wanted))
      expect(ewmaHalfWidth(unit, +count)).toBeCloseTo(half, 4);
    expect(ewmaChart([0, 0, 0], unit).map((point) => point.upperLimit)).toEqual(
      [1, 2, 3].map((count) => ewmaHalfWidth(unit, count)),
    );
  });

  it("is a plain chart of single readings at weight 1", () => {
    const single: EwmaPlan = { target: 0, sigma: 1, weight: 1, limitInSigma: 3 };
    expect(ewmaChart([2.9, 3.1, -3.1, 3], single).map((point) => point.outside)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it("mirrors about the target and scales with the unit", () => {
    fc.assert(
      fc.property(readings, (values) => {
        const unit: EwmaPlan = { target: 1, sigma: 2, weight: 0.25, limitInSigma: 2.7 };
        const here = ewmaChart(values, unit);
        const mirrored = ewmaChart(
          values.map((value) => 2 - value),
          unit,
        );
        const scaled = ewmaChart(
          values.map((value) => 1000 * value),
          { ...unit, target: 1000, sigma: 2000 },
        );
        here.forEach((point, at) => {
          expect(mirrored[at]!.average).toBeCloseTo(2 - point.average, 10);
          expect(scaled[at]!.average).toBeCloseTo(1000 * point.average, 7);
          expect(scaled[at]!.upperLimit).toBeCloseTo(1000 * point.upperLimit, 7);
        });
      }),
    );
  });

  it.each([
    ["no spread", { sigma: 0 }],
    ["a weight of nought", { weight: 0 }],
    ["a weight above 1", { weight: 1.1 }],
    ["no limit", { limitInSigma: 0 }],
  ])("refuses %s", (_what, wrong) => {
    expect(() => ewmaChart([1], { ...plan, ...wrong })).toThrow(RangeError);
    expect(() => ewmaHalfWidth({ ...plan, ...wrong }, 1)).toThrow(RangeError);
  });

  it("refuses limits before the first reading", () =>
    expect(() => ewmaHalfWidth(plan, 0)).toThrow(RangeError));
});

describe("CUSUM chart", () => {
  it("follows Montgomery and Runger's worked table, which stays in control", () => {
    // Source: Montgomery and Runger, Applied Statistics and Probability for Engineers, example 16-6, table 16-8.
    const y = [
      102, 94.8, 98.3, 98.4, 102, 98.5, 99, 97.7, 100, 98.1, 101.3, 98.7, 101.1, 98.4, 97, 96.7, 100.3, 101.4,
      97.2, 101,
    ];
    const high = [2, 0, 0, 0, 2, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1];
    const low = [0, 3.2, 2.9, 2.5, 0, 0, 0, 0.3, 0, 0, 0, 0, 0, 0, 1, 2.3, 0, 0, 0.8, 0];
    const chart = cusumChart(y, { target: 99, allowance: 1, decision: 10 });
    chart.high.forEach((sum, at) => expect(sum).toBeCloseTo(high[at]!, 9));
    chart.low.forEach((sum, at) => expect(sum).toBeCloseTo(low[at]!, 9));
    expect(chart.firstSignal).toBeNull();
  });

  it("signals at the handbook's fourteenth reading", () => {
    // Source: NIST/SEMATECH e-Handbook, section 6.3.2.3 (value from memory, recomputed elsewhere).
    const y = [
      324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
      328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
    ];
    const chart = cusumChart(y, { target: 325, allowance: 0.3175, decision: 4.1959 });
    const wanted = [3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16, 19.04];
    wanted.forEach((sum, at) => expect(Math.abs(chart.high[12 + at]! - sum)).toBeLessThan(0.011));
    expect(chart.firstSignal).toBe(13);
  });

  it("signals four readings sooner with a head start", () => {
    // Source: Lucas and Crosier, Technometrics 24 (1982), table 5, as reprinted in a quality text.
    const y = [0.8, 1.9, 1.4, 2, 1.1, 0.7, 2.6];
    const plan = { target: 0, allowance: 0.5, decision: 5 };
    const plain = cusumChart(y, plan);
    const quick = cusumChart(y, { ...plan, headStart: 2.5 });
    [0.3, 1.7, 2.6, 4.1, 4.7, 4.9, 7].forEach((sum, at) => expect(plain.high[at]).toBeCloseTo(sum, 9));
    [2.8, 4.2, 5.1, 6.6, 7.2, 7.4, 9.5].forEach((sum, at) => expect(quick.high[at]).toBeCloseTo(sum, 9));
    expect([plain.firstSignal, quick.firstSignal]).toEqual([6, 2]);
  });

  it("stays quiet on the decision interval itself", () => {
    expect(cusumChart([2, 1], { target: 0, allowance: 0, decision: 3 }).firstSignal).toBeNull();
    expect(cusumChart([-2, -1, -0.5], { target: 0, allowance: 0, decision: 3 }).firstSignal).toBe(2);
  });

  it("mirrors about the target", () => {
    fc.assert(
      fc.property(readings, (values) => {
        const plan = { target: 1, allowance: 0.5, decision: 6 };
        const here = cusumChart(values, plan);
        const there = cusumChart(
          values.map((value) => 2 - value),
          plan,
        );
        here.high.forEach((sum, at) => expect(there.low[at]).toBeCloseTo(sum, 10));
        here.low.forEach((sum, at) => expect(there.high[at]).toBeCloseTo(sum, 10));
      }),
    );
  });

  it.each([
    ["a negative allowance", { allowance: -1 }],
    ["no decision interval", { decision: 0 }],
    ["a negative head start", { headStart: -1 }],
  ])("refuses %s", (_what, wrong) => {
    expect(() => cusumChart([1], { target: 0, allowance: 1, decision: 5, ...wrong })).toThrow(RangeError);
  });
});
