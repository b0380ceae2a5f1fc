import betaQuantile from "@stdlib/stats/base/dists/beta/quantile";
import binomialCdf from "@stdlib/stats/base/dists/binomial/cdf";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  clopperPearson,
  clopperPearsonUpper,
  trialsToShow,
  wilsonInterval,
} from "../../src/stats/proportionInterval.js";

const counts = fc
  .integer({ min: 1, max: 400 })
  .chain((trials) => fc.record({ trials: fc.constant(trials), events: fc.integer({ min: 0, max: trials }) }));

describe("published intervals", () => {
  it.each([
    // Source: Newcombe, Stat. Med. 17 (1998), 857-872, Table I (values from memory, recomputed elsewhere).
    [81, 263, [0.2553, 0.3662], [0.2527, 0.3676]],
    [15, 148, [0.0624, 0.1605], [0.0578, 0.1617]],
    [0, 20, [0, 0.1611], [0, 0.1684]],
    [1, 29, [0.0061, 0.1718], [0.0009, 0.1776]],
  ] as const)("%i of %i as in Newcombe's table", (events, trials, wilson, exact) => {
    const score = wilsonInterval(events, trials);
    expect(score.low).toBeCloseTo(wilson[0], 4);
    expect(score.high).toBeCloseTo(wilson[1], 4);
    const exactInterval = clopperPearson(events, trials);
    expect(exactInterval.low).toBeCloseTo(exact[0], 4);
    expect(exactInterval.high).toBeCloseTo(exact[1], 4);
  });

  it.each([
    // Source: AOAC single-laboratory POD summary, table D1, Statistics Meeting Book, 15 May 2019, p. 41.
    [12, 20, 0.39, 0.78],
    [10, 20, 0.3, 0.7],
    [11, 20, 0.34, 0.74],
    [20, 20, 0.84, 1],
    [0, 20, 0, 0.16],
  ])("%i of %i detected as in the AOAC table", (events, trials, low, high) => {
    const interval = wilsonInterval(events, trials);
    expect(interval.low).toBeCloseTo(low, 2);
    expect(interval.high).toBeCloseTo(high, 2);
  });

  it("gives the exact limits that R's binom.test prints for 682 of 925", () => {
    // Source: R 4.2.2, help example of binom.test (Conover 1971, p. 97).
    const interval = clopperPearson(682, 925);
    expect(interval.low).toBeCloseTo(0.7076683, 7);
    expect(interval.high).toBeCloseTo(0.7654066, 7);
  });

  it("knows that 20 faultless plates show no better than 13.9 %, and 59 are needed for 5 %", () => {
    // Source: 1 - 0.05^(1/n), by hand; the counts 59, 299, 29 are those of the success-run theorem.
    expect(clopperPearsonUpper(0, 20)).toBeCloseTo(1 - 0.05 ** (1 / 20), 14);
    expect(clopperPearsonUpper(0, 20)).toBeCloseTo(0.139, 3);
    expect(trialsToShow(0.05)).toBe(59);
    expect(trialsToShow(0.01)).toBe(299);
    expect(trialsToShow(0.1)).toBe(29);
    expect(trialsToShow(0.05, 0, 0.9)).toBe(45);
  });

  it("agrees with the table of trials needed when misses occur", () => {
    // Source: common practice (attribute sampling, 95/95): 59, 93, 124, 153 trials with 0, 1, 2, 3 failures.
    expect([0, 1, 2, 3].map((events) => trialsToShow(0.05, events))).toEqual([59, 93, 124, 153]);
  });

  it.each([10, 20, 30, 50, 100, 300, 1500])(
    "keeps the rule of three an upper estimate at %i trials",
    (trials) => {
      // Source: Hanley and Lippman-Hand, JAMA 249 (1983), 1743-1745.
      const upper = clopperPearsonUpper(0, trials);
      expect(upper).toBeLessThan(3 / trials);
      if (trials > 30) expect(upper).toBeGreaterThan((3 / trials) * 0.96);
    },
  );
});

describe("against an independent library", () => {
  it("agrees with @stdlib's beta quantile", () => {
    fc.assert(
      fc.property(counts, fc.constantFrom(0.8, 0.9, 0.95, 0.99), ({ events, trials }, confidence) => {
        const interval = clopperPearson(events, trials, confidence);
        const tail = (1 - confidence) / 2;
        const low = events === 0 ? 0 : betaQuantile(tail, events, trials - events + 1);
        const high = events === trials ? 1 : betaQuantile(1 - tail, events + 1, trials - events);
        expect(interval.low).toBeCloseTo(low, 10);
        expect(interval.high).toBeCloseTo(high, 10);
      }),
      { numRuns: 60 },
    );
  });

  it("leaves exactly 5 % chance of so few events at the upper bound", () => {
    fc.assert(
      fc.property(counts, ({ events, trials }) => {
        fc.pre(events < trials);
        expect(binomialCdf(events, trials, clopperPearsonUpper(events, trials))).toBeCloseTo(0.05, 9);
      }),
    );
  });
});

describe("relations", () => {
  it("mirrors when hits and misses change places", () => {
    fc.assert(
      fc.property(counts, ({ events, trials }) => {
        for (const interval of [wilsonInterval, clopperPearson]) {
          const here = interval(events, trials);
          const there = interval(trials - events, trials);
          expect(here.low).toBeCloseTo(1 - there.high, 12);
          expect(here.low).toBeGreaterThanOrEqual(0);
          expect(here.high).toBeLessThanOrEqual(1);
          expect(here.low).toBeLessThanOrEqual(events / trials);
          expect(here.high).toBeGreaterThanOrEqual(events / trials);
        }
      }),
    );
  });

  it("widens with confidence and narrows with trials", () => {
    fc.assert(
      fc.property(counts, ({ events, trials }) => {
        fc.pre(events < trials);
        expect(clopperPearsonUpper(events, trials, 0.99)).toBeGreaterThan(
          clopperPearsonUpper(events, trials, 0.95),
        );
        expect(clopperPearsonUpper(events, trials + 1)).toBeLessThan(clopperPearsonUpper(events, trials));
        expect(clopperPearsonUpper(events, trials)).toBeLessThan(clopperPearson(events, trials).high);
      }),
    );
  });

  it("asks for the least number of trials, not one more", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.9, noNaN: true }), fc.nat(5), (rate, events) => {
        const trials = trialsToShow(rate, events);
        expect(clopperPearsonUpper(events, trials)).toBeLessThanOrEqual(rate);
        expect(clopperPearsonUpper(events, trials - 1)).toBeGreaterThan(rate);
      }),
      { numRuns: 50 },
    );
  });

  it("says nothing without trials, and nothing when every trial failed", () => {
    expect(clopperPearsonUpper(0, 0)).toBe(1);
    expect(clopperPearsonUpper(3, 3)).toBe(1);
    expect(clopperPearson(0, 0)).toEqual({ low: 0, high: 1 });
    expect(wilsonInterval(0, 0)).toEqual({ low: 0, high: 1 });
    expect(trialsToShow(1)).toBe(0);
    expect(trialsToShow(1, 4)).toBe(4);
  });
});

it.each([
  ["more events than trials", 3, 2, 0.95],
  ["a negative count", -1, 2, 0.95],
  ["half an event", 0.5, 2, 0.95],
  ["half a trial", 1, 2.5, 0.95],
  ["not a number", NaN, 2, 0.95],
  ["confidence in per cent", 1, 2, 95],
  ["full confidence", 1, 2, 1],
])("refuses %s", (_what, events, trials, confidence) => {
  expect(() => wilsonInterval(events, trials, confidence)).toThrow(RangeError);
  expect(() => clopperPearson(events, trials, confidence)).toThrow(RangeError);
  expect(() => clopperPearsonUpper(events, trials, confidence)).toThrow(RangeError);
});

it.each([0, -0.1, 5, NaN])("refuses to show a rate of %s", (rate) => {
  expect(() => trialsToShow(rate)).toThrow(RangeError);
});
