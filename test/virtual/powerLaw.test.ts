import { describe, expect, it } from "vitest";
import { powerLaw } from "../../src/virtual/powerLaw.js";

/** Far above 1/K the law is R = A * C^-beta: with K large, A = R0 * K^-beta. */
const K_PER_PPM = 1e9;
const farAbove = (amplitudeOhm: number, ppm: number, beta: number) =>
  powerLaw(amplitudeOhm * K_PER_PPM ** beta, K_PER_PPM * ppm, beta);

describe("the power law of metal oxides (Clifford and Tuma 1983)", () => {
  it.each([
    [1, 50_000],
    [10, 15_811.388],
    [100, 5_000],
    [1000, 1_581.139],
  ])("gives check MX-E1 at %s ppm", (ppm, ohm) => {
    // Check MX-E1: A = 50 000 ohm, beta = 0.5.
    expect(farAbove(50_000, ppm, 0.5)).toBeCloseTo(ohm, 2);
  });

  it.each([
    [0.2, 0.631],
    [0.3, 0.5012],
    [0.5, 0.3162],
    [0.6, 0.2512],
    [0.8, 0.1585],
    [1.0, 0.1],
  ])("falls by check MX-E2 a decade at beta %s", (beta, ratio) => {
    expect(farAbove(1000, 100, beta) / farAbove(1000, 10, beta)).toBeCloseTo(ratio, 4);
  });

  it.each([
    [0.2, 0.8706],
    [0.3, 0.8123],
    [0.5, 0.7071],
    [0.8, 0.5743],
  ])("falls by check MX-E3 a doubling at beta %s", (beta, ratio) => {
    expect(farAbove(1000, 20, beta) / farAbove(1000, 10, beta)).toBeCloseTo(ratio, 4);
  });

  it.each([
    [0.2, 5.101],
    [0.3, 3.372],
    [0.5, 2.01],
    [0.8, 1.252],
    [1.0, 1.0],
  ])("turns 1 %% of resistance into the error of check MX-E4 at beta %s", (beta, pct) => {
    // The concentration whose resistance is 1 % higher is lower by 1.01^(-1/beta); MX-E4 states the factor up.
    const factor = 1.01 ** (1 / beta);
    expect((factor - 1) * 100).toBeCloseTo(pct, 2);
    expect(farAbove(1000, 10 / factor, beta) / farAbove(1000, 10, beta)).toBeCloseTo(1.01, 8);
  });

  it("is the clean resistance in clean air", () => {
    expect(powerLaw(62_000, 0, 0.4)).toBe(62_000);
  });

  it("saturates: each further ppm lowers the resistance by less", () => {
    const fall = (ppm: number) => powerLaw(1000, ppm, 0.4) - powerLaw(1000, ppm + 1, 0.4);
    expect(fall(1)).toBeLessThan(fall(0));
    expect(fall(100)).toBeLessThan(fall(1) / 50);
  });

  it.each([
    ["a clean resistance of 0", 0, 1, 0.5],
    ["a negative stimulus", 1000, -0.1, 0.5],
    ["a stimulus without end", 1000, Infinity, 0.5],
    ["beta 0", 1000, 1, 0],
    ["beta above 1", 1000, 1, 1.1],
    ["no number", Number.NaN, 1, 0.5],
  ])("refuses %s", (_what, clean, stimulus, beta) => {
    expect(() => powerLaw(clean, stimulus, beta)).toThrow(RangeError);
  });
});
