/** Checks of the statistics against published and independently computed values, each named by its id. */
import { describe, expect, it } from "vitest";
import { cohenKappa, mcNemar } from "../../src/stats/agreement.js";
import { inverseRegularisedBeta } from "../../src/stats/beta.js";
import { fitTemperatureOfLabels, isotonicRegression, plattTargets } from "../../src/stats/calibration.js";
import { conformalPValue, conformalRank, conformalThreshold } from "../../src/stats/conformal.js";
import { cusumChart, ewmaChart, ewmaHalfWidth } from "../../src/stats/controlChart.js";
import { fitProbit, fitSingleHit, threeSigmaLimit } from "../../src/stats/detectionLimit.js";
import { likelihoodRatios, posterior, youdenIndex } from "../../src/stats/diagnosis.js";
import { softmax } from "../../src/stats/logistic.js";
import {
  clopperPearson,
  clopperPearsonUpper,
  trialsToShow,
  wilsonInterval,
} from "../../src/stats/proportionInterval.js";
import {
  brierDecomposition,
  brierScore,
  expectedCalibrationError,
  maximumCalibrationError,
  reliabilityCurve,
} from "../../src/stats/scores.js";
import {
  acceptanceNumber,
  decisionLines,
  expectedTrials,
  ratePlan,
  rejectionNumber,
  trialsForShift,
} from "../../src/stats/sequentialTest.js";
import { mean, standardDeviation } from "../../src/stats/summary.js";
import { check, hasCheckValues, idsStarting } from "./checkValues.js";

type Pair = readonly [number, number];

const expectPair = (actual: { low: number; high: number }, wanted: Pair, digits: number) => {
  expect(actual.low).toBeCloseTo(wanted[0], digits);
  expect(actual.high).toBeCloseTo(wanted[1], digits);
};
const expectAll = (actual: ArrayLike<number>, wanted: readonly number[], digits: number) => {
  expect(actual.length).toBe(wanted.length);
  wanted.forEach((value, at) => expect(actual[at]).toBeCloseTo(value, digits));
};

describe.skipIf(!hasCheckValues)("intervals for a proportion", () => {
  const intervals = idsStarting("ST-W");
  it("are all here", () => expect(intervals).toHaveLength(13));

  it.each(intervals)("%s", (id) => {
    const one = check<{ x: number; n: number; wilson?: Pair; wilson_2dp?: Pair; clopper_pearson?: Pair }>(id);
    const digits = id === "ST-W12" ? 7 : 4;
    expect(one.wilson ?? one.wilson_2dp).toBeDefined();
    if (one.wilson) expectPair(wilsonInterval(one.x, one.n), one.wilson, digits);
    if (one.wilson_2dp) expectPair(wilsonInterval(one.x, one.n), one.wilson_2dp, 2);
    if (one.clopper_pearson) expectPair(clopperPearson(one.x, one.n), one.clopper_pearson, digits);
  });

  it("ST-R1: nothing went wrong", () => {
    const one = check<{ n: number[]; exact_one_sided: number[]; two_sided_CP_upper: number[] }>("ST-R1");
    one.n.forEach((trials, at) => {
      expect(clopperPearsonUpper(0, trials)).toBeCloseTo(one.exact_one_sided[at]!, 5);
      expect(clopperPearson(0, trials).high).toBeCloseTo(one.two_sided_CP_upper[at]!, 5);
    });
  });

  it("ST-R2: trials with no miss", () => {
    const one = check<Record<"p95_conf95" | "p99_conf95" | "p90_conf95" | "p95_conf90", number>>("ST-R2");
    expect(trialsToShow(0.05)).toBe(one.p95_conf95);
    expect(trialsToShow(0.01)).toBe(one.p99_conf95);
    expect(trialsToShow(0.1)).toBe(one.p90_conf95);
    expect(trialsToShow(0.05, 0, 0.9)).toBe(one.p95_conf90);
  });

  it("ST-R3: one-sided Wilson is the two-sided one at 90 %", () => {
    const one = check<{ n: number[]; lower: number[] }>("ST-R3");
    one.n.forEach((trials, at) =>
      expect(wilsonInterval(trials, trials, 0.9).low).toBeCloseTo(one.lower[at]!, 3),
    );
  });
});

describe.skipIf(!hasCheckValues)("scores and calibration", () => {
  it("ST-B1 and ST-B2: Brier score and its parts", () => {
    const one = check<{ f: number[]; o: number[] } & Record<string, number>>("ST-B1");
    const parts = brierDecomposition(one.f, one.o);
    expectAll(
      [parts.brier, parts.reliability, parts.resolution, parts.uncertainty, parts.baseRate],
      ["brier", "rel", "res", "unc", "base"].map((key) => one[key]!),
      12,
    );
    expect(expectedCalibrationError(one.f, one.o)).toBeCloseTo(one["ece_3_values"]!, 12);
    const two = check<{ p: number; o: number; out: number }>("ST-B2");
    expect(brierScore([two.p], [two.o])).toBeCloseTo(two.out, 12);
  });

  it("ST-B3: expected calibration error", () => {
    const one = check<{
      conf: number[];
      correct: number[];
      bins: Record<string, number[]>;
      ece: number;
      mce: number;
    }>("ST-B3");
    expect(expectedCalibrationError(one.conf, one.correct)).toBeCloseTo(one.ece, 4);
    expect(maximumCalibrationError(one.conf, one.correct)).toBeCloseTo(one.mce, 4);
    const curve = reliabilityCurve(one.conf, one.correct, 10);
    Object.values(one.bins).forEach((bin, at) =>
      expectAll([curve[at]!.count, curve[at]!.observedFraction, curve[at]!.meanPredicted], bin, 4),
    );
  });

  it("ST-B4: temperature", () => {
    const one = check<{
      logits: number[][];
      labels: number[];
      nll_T1: number;
      T_star: number;
      nll_star: number;
    }>("ST-B4");
    const lossAt = (t: number) =>
      mean(one.logits.map((row, at) => -Math.log(softmax(row, t)[one.labels[at]!]!)));
    const temperature = fitTemperatureOfLabels(one.logits, one.labels);
    expectAll([lossAt(1), temperature, lossAt(temperature)], [one.nll_T1, one.T_star, one.nll_star], 5);
  });

  it("ST-B5: softmax", () => {
    const one = check<{ z: number[]; T1: number[]; T2: number[]; T05: number[] }>("ST-B5");
    expectAll(softmax(one.z), one.T1, 5);
    expectAll(softmax(one.z, 2), one.T2, 5);
    expectAll(softmax(one.z, 0.5), one.T05, 5);
  });

  it("ST-B6: Platt's targets", () => {
    const one = check<{ pos_neg: Pair; targets: Pair; pos_neg2: Pair; targets2: Pair }>("ST-B6");
    const first = plattTargets(...one.pos_neg);
    const second = plattTargets(...one.pos_neg2);
    expectAll([first.positive, first.negative], one.targets, 6);
    expectAll([second.positive, second.negative], one.targets2, 6);
  });

  it.each(["ST-B7", "ST-B8", "ST-B9"])("%s: isotonic regression", (id) => {
    const one = check<{ y: number[]; out: number[] }>(id);
    expectAll(isotonicRegression(one.y), one.out, 7);
  });
});

describe.skipIf(!hasCheckValues)("conformal prediction", () => {
  it("ST-C1 and ST-C2: rank", () => {
    const one = check<{ n: number[]; alpha: number[]; k: number[] }>("ST-C1");
    expect(one.n.map((count, at) => conformalRank(count, one.alpha[at]!))).toEqual(one.k);
    const two = check<{ n: number; alpha: number; k: number }>("ST-C2");
    expect(conformalRank(two.n, two.alpha)).toBe(two.k);
  });

  it("ST-C3: cut-offs and p-values", () => {
    const one = check<{ scores: number[]; qhat: Record<string, number>; p_value: Record<string, number> }>(
      "ST-C3",
    );
    for (const [alpha, cutOff] of Object.entries(one.qhat))
      expect(conformalThreshold(one.scores, +alpha)).toBe(cutOff);
    for (const [score, p] of Object.entries(one.p_value)) expect(conformalPValue(one.scores, +score)).toBe(p);
  });

  it("ST-C4: coverage of one calibration set is a beta variate", () => {
    const one = check<{ n: number; alpha: number; beta: Pair; q05_q95: Pair; n2: number; q05_q95_2: Pair }>(
      "ST-C4",
    );
    const shapes = (count: number): Pair => {
      const rank = conformalRank(count, one.alpha);
      return [rank, count + 1 - rank];
    };
    expect(shapes(one.n)).toEqual(one.beta);
    for (const [count, limits] of [
      [one.n, one.q05_q95],
      [one.n2, one.q05_q95_2],
    ] as const)
      // prettier-ignore
      [0.05, 0.95].forEach((p, at) =>
        expect(inverseRegularisedBeta(p, ...shapes(count))).toBeCloseTo(limits[at]!, 4),
      );
  });
});

describe.skipIf(!hasCheckValues)("sequential tests and control charts", () => {
  it("ST-S1: a sampling plan", () => {
    const one = check<Record<string, number>>("ST-S1");
    const plan = ratePlan(0.01, 0.1, 0.05, 0.1);
    const lines = decisionLines(plan);
    const asn = expectedTrials(plan);
    expectAll(
      [lines.slope, lines.acceptOffset, lines.rejectOffset],
      ["s", "h_accept", "h_reject"].map((key) => one[key]!),
      6,
    );
    expectAll(
      [asn.atLowRate, asn.atHighRate, asn.atSlope],
      ["ASN_p0", "ASN_p1", "ASN_s"].map((key) => one[key]!),
      2,
    );
    expect(acceptanceNumber(plan, one["first_accept_n"]!)).toBe(0);
    expect(acceptanceNumber(plan, one["first_accept_n"]! - 1)).toBeNull();
    const rejects = check<{ reject_number: { n1_19: number; n20_45: number; n46: number } }>(
      "ST-S1",
    ).reject_number;
    expect([2, 19].map((n) => rejectionNumber(plan, n))).toEqual([rejects.n1_19, rejects.n1_19]);
    expect([20, 45].map((n) => rejectionNumber(plan, n))).toEqual([rejects.n20_45, rejects.n20_45]);
    expect(rejectionNumber(plan, 46)).toBe(rejects.n46);
  });

  it("ST-S2 and ST-S3: a guesser, and a shift", () => {
    const one = check<Record<string, number> & { bounds: Pair }>("ST-S2");
    const plan = ratePlan(0.5, 0.9, 0.05, 0.05);
    expectAll([plan.eventStep, plan.nonEventStep], [one["llr_hit"]!, one["llr_miss"]!], 6);
    expectPair(plan.bounds, one.bounds, 6);
    const asn = expectedTrials(plan);
    expectAll([asn.atLowRate, asn.atHighRate], [one["ASN_p0"]!, one["ASN_p1"]!], 2);
    const shift = check<{ ASN: number; fixed_n: number }>("ST-S3");
    const trials = trialsForShift(1, 0.05, 0.05);
    expectAll([trials.sequential, trials.fixed], [shift.ASN, shift.fixed_n], 2);
  });

  it("ST-S4 and ST-S5: EWMA", () => {
    const one = check<{ y: number[]; ewma: number[]; UCL: number; LCL: number; in_control: boolean }>(
      "ST-S4",
    );
    const plan = { target: 50, sigma: 2.0539, weight: 0.3, limitInSigma: 3 };
    const chart = ewmaChart(one.y, plan);
    expectAll(
      chart.map((point) => point.average),
      one.ewma,
      2,
    );
    expect(50 + ewmaHalfWidth(plan, Infinity)).toBeCloseTo(one.UCL, 4);
    expect(50 - ewmaHalfWidth(plan, Infinity)).toBeCloseTo(one.LCL, 4);
    expect(chart.every((point) => !point.outside)).toBe(one.in_control);
    const two = check<{ i: number[]; out: number[] }>("ST-S5");
    const unit = { target: 0, sigma: 1, weight: 0.2, limitInSigma: 3 };
    expectAll(
      two.i.map((count) => ewmaHalfWidth(unit, count)),
      two.out,
      4,
    );
  });

  it("ST-S6, ST-S7 and ST-S8: CUSUM", () => {
    const six = check<{ y: number[]; sH: number[]; sL: number[]; signal: boolean }>("ST-S6");
    const table = cusumChart(six.y, { target: 99, allowance: 1, decision: 10 });
    expectAll(table.high, six.sH, 9);
    expectAll(table.low, six.sL, 9);
    expect(table.firstSignal !== null).toBe(six.signal);
    const seven = check<{ y: number[]; SH_from_13: number[]; first_signal: number }>("ST-S7");
    const wafers = cusumChart(seven.y, { target: 325, allowance: 0.3175, decision: 4.1959 });
    seven.SH_from_13.forEach((sum, at) => expect(Math.abs(wafers.high[12 + at]! - sum)).toBeLessThan(0.011));
    expect(wafers.firstSignal).toBe(seven.first_signal - 1);
    const eight = check<
      { y: number[]; no_FIR: number[]; "FIR_start_2.5": number[] } & Record<string, number>
    >("ST-S8");
    const plain = cusumChart(eight.y, { target: 0, allowance: 0.5, decision: 5 });
    const quick = cusumChart(eight.y, { target: 0, allowance: 0.5, decision: 5, headStart: 2.5 });
    expectAll(plain.high, eight.no_FIR, 9);
    expectAll(quick.high, eight["FIR_start_2.5"], 9);
    expect(plain.firstSignal).toBe(eight["signal_no_FIR"]! - 1);
    expect(quick.firstSignal).toBe(eight["signal_FIR"]! - 1);
  });
});

describe.skipIf(!hasCheckValues)("agreement and diagnosis", () => {
  it.each(["ST-K1", "ST-K2", "ST-K3"])("%s: kappa", (id) => {
    const one = check<{ m: number[][]; po: number; pe: number; kappa: number }>(id);
    const { observed, expected, kappa } = cohenKappa(one.m);
    expectAll([observed, expected], [one.po, one.pe], 10);
    expect(Math.abs(kappa! - one.kappa)).toBeLessThan(0.0005);
  });

  it.each(["ST-K4", "ST-K5"])("%s: McNemar", (id) => {
    const one = check<{
      b: number;
      c: number;
      chi2: number;
      chi2_cc: number;
      p_cc?: number;
      exact_p?: number;
    }>(id);
    const test = mcNemar(one.b, one.c);
    expectAll([test.chiSquared, test.correctedChiSquared], [one.chi2, one.chi2_cc], 4);
    expect(one.p_cc ?? one.exact_p).toBeDefined();
    if (one.p_cc !== undefined) expect(test.correctedP).toBeCloseTo(one.p_cc, 8);
    if (one.exact_p !== undefined) expect(test.exactP).toBeCloseTo(one.exact_p, 5);
  });

  const diagnoses = idsStarting("ST-D");
  it("has all diagnoses", () => expect(diagnoses).toHaveLength(4));

  it.each(diagnoses)("%s: Bayes in odds", (id) => {
    const one = check<
      Record<"pre" | "sens" | "spec" | "post_pos" | "post_neg", number> & Record<string, number>
    >(id);
    const ratios = likelihoodRatios(one.sens, one.spec);
    expect(posterior(one.pre, ratios.positive)).toBeCloseTo(one.post_pos, 4);
    expect(posterior(one.pre, ratios.negative)).toBeCloseTo(one.post_neg, 4);
    if (one["LRpos"] !== undefined) expect(ratios.positive).toBeCloseTo(one["LRpos"], 10);
    if (one["LRneg"] !== undefined) expect(ratios.negative).toBeCloseTo(one["LRneg"], 4);
    if (one["youden"] !== undefined) expect(youdenIndex(one.sens, one.spec)).toBeCloseTo(one["youden"], 12);
  });
});

describe.skipIf(!hasCheckValues)("detection limits", () => {
  it("ST-LE1: blank and three sigma", () => {
    const one = check<{ blank: number[] } & Record<string, number>>("ST-LE1");
    const limit = threeSigmaLimit(one.blank, 2.5);
    expectAll(
      [mean(one.blank), standardDeviation(one.blank), limit.signal, limit.dose],
      ["mean", "sd", "mean_plus_3sd", "lod_slope_2.5"].map((key) => one[key]!),
      6,
    );
  });

  it("ST-LE2: detection against dose", () => {
    const one = check<{
      dose: number[];
      n: number;
      x: number[];
      poisson_a: number;
      LOD50: number;
      LOD95: number;
      probit_log10: { b0: number; b1: number; LOD50: number; LOD95: number };
    }>("ST-LE2");
    const trials = one.dose.map((dose, at) => ({ dose, trials: one.n, detected: one.x[at]! }));
    const hit = fitSingleHit(trials)!;
    expect(hit.rate).toBeCloseTo(one.poisson_a, 5);
    expectAll([hit.lod50, hit.lod95], [one.LOD50, one.LOD95], 4);
    const probit = fitProbit(trials)!;
    const wanted = one.probit_log10;
    expectAll(
      [probit.intercept, probit.slope, probit.lod50, probit.lod95],
      [wanted.b0, wanted.b1, wanted.LOD50, wanted.LOD95],
      4,
    );
  });
});
