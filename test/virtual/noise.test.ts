import { expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import { mean, standardDeviation } from "../../src/stats/summary.js";
import { chanceAt, spreadFactor } from "../../src/virtual/chance.js";
import { filmAge } from "../../src/virtual/filmAge.js";
import { dailyWalk, wander } from "../../src/virtual/noise.js";

/** One long run of the autoregressive process. */
function run(steps: number, stepMs: number) {
  const random = seededRandom(11);
  const values: number[] = [];
  let value = wander(0, 2, 1000, Infinity, random);
  for (let i = 0; i < steps; i += 1) {
    value = wander(value, 2, 1000, stepMs, random);
    values.push(value);
  }
  return values;
}

it("wanders with the stated standard deviation and correlation, whatever the step", () => {
  // Theory of the Ornstein-Uhlenbeck process: variance sd^2, correlation exp(-step / tau).
  for (const stepMs of [100, 700]) {
    const values = run(60_000, stepMs);
    expect(mean(values)).toBeCloseTo(0, 0);
    expect(standardDeviation(values)).toBeGreaterThan(1.9);
    expect(standardDeviation(values)).toBeLessThan(2.1);
    const lagged = mean(values.slice(1).map((value, i) => value * values[i]!)) / 4;
    expect(lagged).toBeCloseTo(Math.exp(-stepMs / 1000), 1);
  }
});

it("does not move in no time", () => {
  expect(wander(0.7, 2, 1000, 0, seededRandom(1))).toBe(0.7);
});

it("walks day by day: tomorrow is today and one step", () => {
  const dayOf = (day: number) => chanceAt(5, 1, day);
  const walks = Array.from({ length: 30 }, (_, days) => dailyWalk(days, 0.01, dayOf));
  expect(walks[0]).toBe(0);
  walks.slice(1).forEach((walk, i) => {
    expect(Math.abs(walk - walks[i]!)).toBeGreaterThan(0);
    expect(Math.abs(walk - walks[i]!)).toBeLessThan(0.05);
  });
});

it("spreads as the root of the days over many units", () => {
  // Variance of a sum of independent steps: sd sqrt(n).
  const after = (days: number) =>
    standardDeviation(
      Array.from({ length: 800 }, (_, unit) => dailyWalk(days, 0.01, (day) => chanceAt(unit, 1, day))),
    );
  expect(after(25) / after(1)).toBeGreaterThan(4.5);
  expect(after(25) / after(1)).toBeLessThan(5.5);
});

it("refuses half a day and a day before the first", () => {
  const dayOf = () => seededRandom(1);
  expect(() => dailyWalk(0.5, 0.01, dayOf)).toThrow(RangeError);
  expect(() => dailyWalk(-1, 0.01, dayOf)).toThrow(RangeError);
});

it("ages each film by itself, and loses sensitivity faster when poisoned", () => {
  const dayOf = (day: number) => chanceAt(3, 4, day);
  const fresh = filmAge(0, 0, dayOf);
  expect(fresh).toEqual({ logOhmDrift: [0, 0], sensitivityLeft: 1 });
  const old = filmAge(100, 0, dayOf);
  expect(old.logOhmDrift[0]).not.toBe(old.logOhmDrift[1]);
  expect(old.sensitivityLeft).toBeLessThan(1);
  expect(filmAge(100, 0.02, dayOf).sensitivityLeft).toBeCloseTo(old.sensitivityLeft * Math.exp(-2), 12);
  expect(() => filmAge(1, -0.1, dayOf)).toThrow(RangeError);
});

it("gives every purpose and moment a stream of its own, and repeats it", () => {
  const firstOf = (seed: number, purpose: number, moment: number) => chanceAt(seed, purpose, moment)();
  const draws = [1, 2, 3].flatMap((seed) =>
    [1, 2, 3].flatMap((purpose) =>
      Array.from({ length: 300 }, (_, moment) => firstOf(seed, purpose, moment)),
    ),
  );
  expect(new Set(draws).size).toBe(draws.length);
  expect(mean(draws)).toBeCloseTo(0.5, 1);
  expect(standardDeviation(draws)).toBeCloseTo(Math.sqrt(1 / 12), 1); // uniform on [0, 1)
  expect(firstOf(3, 2, 1)).toBe(firstOf(3, 2, 1));
});

it("spreads log-normally about a median of 1", () => {
  const random = seededRandom(2);
  const logs = Array.from({ length: 5000 }, () => Math.log(spreadFactor(random, 0.3)));
  expect(Math.abs(mean(logs))).toBeLessThan(0.02);
  expect(standardDeviation(logs)).toBeCloseTo(0.3, 1);
});
