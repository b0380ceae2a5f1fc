/** The check jar: a household check standard, sniffed now and then to see whether the sniffer has drifted. */
import type { Sniff, SniffPhase } from "../sniff/sniff.js";
import { cusumChart, ewmaChart } from "../stats/controlChart.js";
import { mean, median, standardDeviation } from "../stats/summary.js";

/** First readings that set target and spread (Phase I). Handbooks ask for 20 and more; ten is what a household does. */
export const PHASE_ONE_READINGS = 10;
/** Weight and limits of the EWMA chart: NIST/SEMATECH e-Handbook 6.3.2.4, weight 0.2 to 0.3, limits at 3 sigma. */
const EWMA = { weight: 0.2, limitInSigma: 3 };
/** Allowance and decision interval of the CUSUM in sigma: half a sigma and 5, Montgomery's usual choice. */
const CUSUM = { allowance: 0.5, decision: 5 };
/** Last sweeps over the jar that are averaged: the vapour has settled by then. */
const LAST_SWEEPS = 5;
/** A jar never repeats better than this, in ln R; it keeps ten lucky readings from making every later one an alarm. */
const LEAST_SIGMA = 0.01;

/** What the readings so far say. */
export interface JarVerdict {
  /** Distance of the moving average from the target, one a reading, in ln R; empty in Phase I. */
  readonly distances: readonly number[];
  /** Limit of those distances once the chart has settled; null in Phase I. */
  readonly limit: number | null;
  /** null in Phase I: too few readings to tell. */
  readonly inControl: boolean | null;
}

/**
 * One reading: mean over the channels of ln(R over the jar / R in clean air), by the median of each stretch.
 *
 * @returns null without clean air, for then there is nothing to compare with
 */
export function jarScore(sniff: Sniff): number | null {
  if (sniff.cleanAir === undefined) return null;
  const before = channelMedians(sniff.cleanAir);
  const over = channelMedians({
    atMs: sniff.headspace.atMs.slice(-LAST_SWEEPS),
    ohm: sniff.headspace.ohm.slice(-LAST_SWEEPS),
  });
  return mean(over.map((value, channel) => value - (before[channel] ?? Number.NaN)));
}

/** Is the sniffer in control? Both charts must agree: the average sees slow drift, the sum a small lasting step. */
export function judgeJar(scores: readonly number[]): JarVerdict {
  if (scores.length <= PHASE_ONE_READINGS) return { distances: [], limit: null, inControl: null };
  const phaseOne = scores.slice(0, PHASE_ONE_READINGS);
  const target = mean(phaseOne);
  const sigma = Math.max(LEAST_SIGMA, standardDeviation(phaseOne));
  const watched = scores.slice(PHASE_ONE_READINGS);
  const averages = ewmaChart(watched, { target, sigma, ...EWMA });
  const sums = cusumChart(watched, {
    target,
    allowance: CUSUM.allowance * sigma,
    decision: CUSUM.decision * sigma,
  });
  const decision = CUSUM.decision * sigma;
  const last = averages.at(-1);
  const sumOutside = (sums.high.at(-1) ?? 0) > decision || (sums.low.at(-1) ?? 0) > decision;
  return {
    distances: averages.map(({ average }) => Math.abs(average - target)),
    limit: last === undefined ? null : last.upperLimit - target,
    inControl: !(last?.outside ?? false) && !sumOutside,
  };
}

/**
 * The verdict for a nose: one that was brought up to date with fresh samples knows the sniffer as it has become, so an
 * alarm from before no longer counts and the readings since then set target and spread anew.
 *
 * @param readings - oldest first
 * @param refreshedAt - ISO 8601 instant of the refresh; null for a nose that was not refreshed
 */
export function judgeJarFor(
  readings: readonly { readonly at: string; readonly score: number }[],
  refreshedAt: string | null,
): JarVerdict {
  const verdict = judgeJar(readings.map(({ score }) => score));
  if (verdict.inControl !== false || refreshedAt === null) return verdict;
  const sinceMs = Date.parse(refreshedAt);
  return judgeJar(readings.filter(({ at }) => Date.parse(at) > sinceMs).map(({ score }) => score));
}

function channelMedians({ ohm }: SniffPhase): number[] {
  const channels = ohm[0]?.length ?? 0;
  return Array.from({ length: channels }, (_, channel) =>
    median(ohm.map((sweep) => Math.log(sweep[channel] ?? Number.NaN))),
  );
}
