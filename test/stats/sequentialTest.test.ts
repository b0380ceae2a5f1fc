import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import {
  acceptanceNumber,
  decisionLines,
  expectedTrials,
  rateDecision,
  ratePlan,
  rejectionNumber,
  sequentialDecision,
  stoppingBounds,
  trialsForShift,
} from "../../src/stats/sequentialTest.js";

describe("a sampling plan, 1 % against 10 %", () => {
  // Source: NIST/SEMATECH e-Handbook, section 6.2.6 (value from memory, recomputed elsewhere).
  const plan = ratePlan(0.01, 0.1, 0.05, 0.1);

  it("has the handbook's lines", () => {
    const lines = decisionLines(plan);
    expect(lines.slope).toBeCloseTo(0.039747, 6);
    expect(lines.acceptOffset).toBeCloseTo(0.938862, 6);
    expect(lines.rejectOffset).toBeCloseTo(1.205379, 6);
    expect(Math.exp(plan.bounds.high)).toBeCloseTo(18, 10);
    expect(Math.exp(plan.bounds.low)).toBeCloseTo(0.105263, 6);
  });

  it("accepts after 24 faultless trials, not after 23", () => {
    expect([1, 23, 24, 48, 49].map((trials) => acceptanceNumber(plan, trials))).toEqual([
      null,
      null,
      0,
      0,
      1,
    ]);
    expect([1, 2, 19, 20, 45, 46].map((trials) => rejectionNumber(plan, trials))).toEqual([
      null,
      2,
      2,
      3,
      3,
      4,
    ]);
    expect([rateDecision(plan, 0, 23), rateDecision(plan, 0, 24)]).toEqual(["goOn", "takeFirst"]);
    expect([rateDecision(plan, 1, 2), rateDecision(plan, 2, 2)]).toEqual(["goOn", "takeSecond"]);
  });

  it("takes as many trials on average as Wald says", () => {
    const mean = expectedTrials(plan);
    expect(mean.atLowRate).toBeCloseTo(27.96, 2);
    expect(mean.atHighRate).toBeCloseTo(16.45, 2);
    expect(mean.atSlope).toBeCloseTo(29.65, 2);
  });

  it("decides by its numbers as by its likelihood", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 300 }), fc.nat(300), (trials, events) => {
        fc.pre(events <= trials);
        const decision = rateDecision(plan, events, trials);
        const accepts = events <= (acceptanceNumber(plan, trials) ?? -1);
        const rejects = events >= (rejectionNumber(plan, trials) ?? Infinity);
        expect(decision).toBe(accepts ? "takeFirst" : rejects ? "takeSecond" : "goOn");
      }),
      { numRuns: 1000 },
    );
  });
});

it("tells a guesser from one who is right nine times in ten after six hits in a row", () => {
  // Source: Wald's approximations, computed in plain Python; ln 1.8 and ln 0.2 by hand.
  const plan = ratePlan(0.5, 0.9, 0.05, 0.05);
  expect(plan.eventStep).toBeCloseTo(0.587787, 6);
  expect(plan.nonEventStep).toBeCloseTo(-1.609438, 6);
  expect(plan.bounds.low).toBeCloseTo(-2.944439, 6);
  expect(plan.bounds.high).toBeCloseTo(2.944439, 6);
  expect([rateDecision(plan, 5, 5), rateDecision(plan, 6, 6)]).toEqual(["goOn", "takeSecond"]);
  expect([rateDecision(plan, 0, 1), rateDecision(plan, 0, 2)]).toEqual(["goOn", "takeFirst"]);
  expect(expectedTrials(plan).atLowRate).toBeCloseTo(5.19, 2);
  expect(expectedTrials(plan).atHighRate).toBeCloseTo(7.2, 2);
});

it("sees a shift of one standard deviation in half the readings a fixed number needs", () => {
  // Source: Wald (1945); 5.30 and 10.82 computed in plain Python, (2 * 1.6449)^2 by hand.
  const trials = trialsForShift(1, 0.05, 0.05);
  expect(trials.sequential).toBeCloseTo(5.3, 2);
  expect(trials.fixed).toBeCloseTo(10.82, 2);
  expect(trialsForShift(-2, 0.05, 0.05).fixed).toBeCloseTo(trials.fixed / 4, 10);
  expect(trialsForShift(-2, 0.05, 0.05).sequential).toBeCloseTo(trials.sequential / 4, 10);
});

it("errs no more often than promised, by simulation", () => {
  // Wald: the true chances stay below falseAlarm / (1 - miss) and miss / (1 - falseAlarm).
  const plan = ratePlan(0.2, 0.5, 0.05, 0.1);
  const random = seededRandom(9);
  const runs = 4000;
  const shareOf = (rate: number, wanted: string) => {
    let count = 0;
    for (let run = 0; run < runs; run += 1) {
      let [events, trials] = [0, 0];
      while (rateDecision(plan, events, trials) === "goOn") {
        trials += 1;
        if (random() < rate) events += 1;
      }
      if (rateDecision(plan, events, trials) === wanted) count += 1;
    }
    return count / runs;
  };
  const fourErrors = 4 * Math.sqrt((0.1 * 0.9) / runs);
  expect(shareOf(0.2, "takeSecond")).toBeLessThan(0.05 / 0.9 + fourErrors);
  expect(shareOf(0.5, "takeFirst")).toBeLessThan(0.1 / 0.95 + fourErrors);
  expect(shareOf(0.5, "takeSecond")).toBeGreaterThan(0.85);
});

it("stops on a bound, goes on between them", () => {
  const bounds = stoppingBounds(0.05, 0.05);
  expect(sequentialDecision(bounds.high, bounds)).toBe("takeSecond");
  expect(sequentialDecision(bounds.low, bounds)).toBe("takeFirst");
  expect(sequentialDecision(0, bounds)).toBe("goOn");
});

it("refuses plans that cannot be", () => {
  expect(() => ratePlan(0.1, 0.01, 0.05, 0.1)).toThrow(RangeError);
  expect(() => ratePlan(0, 0.1, 0.05, 0.1)).toThrow(RangeError);
  expect(() => ratePlan(0.1, 1, 0.05, 0.1)).toThrow(RangeError);
  expect(() => stoppingBounds(0.5, 0.5)).toThrow(RangeError);
  expect(() => stoppingBounds(0, 0.5)).toThrow(RangeError);
  expect(() => stoppingBounds(0.5, 0)).toThrow(RangeError);
  expect(() => trialsForShift(0, 0.05, 0.05)).toThrow(RangeError);
  expect(() => rateDecision(ratePlan(0.1, 0.2, 0.1, 0.1), 3, 2)).toThrow(RangeError);
  expect(() => acceptanceNumber(ratePlan(0.1, 0.2, 0.1, 0.1), 1.5)).toThrow(RangeError);
  expect(() => sequentialDecision(NaN, stoppingBounds(0.1, 0.1))).toThrow(RangeError);
});
