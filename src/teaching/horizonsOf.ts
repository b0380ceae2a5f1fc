import { headspaceMs } from "../nose/answer.js";
import { quantile } from "../stats/summary.js";
import type { Sniff } from "../sniff/sniff.js";

/** One stretch of the headspace that the nose is taught and calibrated on. */
export interface HorizonSpan {
  readonly fromMs: number;
  readonly uptoMs: number;
}

/** Shares of the usual headspace time at which the nose may answer: about 20, 45, 70 and 90 s of 90 s. */
const SHARES = [0.25, 0.5, 0.75];
/** Sweeps do not come to the millisecond: a sniff this much short of a horizon has reached it. */
const TIMING_SLACK = 0.03;
/** Nine in ten samples reach the last horizon; the odd one that was cut short must not set the limit. */
const SHORT_SHARE = 0.1;

/** Horizons that suit the lengths of the samples; a single one where the headspace is a single sweep. */
export function horizonsOf(sniffs: readonly Sniff[]): HorizonSpan[] {
  const lengths = sniffs.map(headspaceMs);
  const usualMs = quantile(lengths, SHORT_SHARE);
  const longestMs = lengths.reduce((most, length) => Math.max(most, length), 0);
  const last = { fromMs: usualMs * (1 - TIMING_SLACK), uptoMs: longestMs };
  const sweeps = sniffs.map((sniff) => sniff.headspace.ohm.length);
  if (quantile(sweeps, SHORT_SHARE) < 8) return [last];
  const early = SHARES.map((share) => ({
    fromMs: usualMs * share * (1 - TIMING_SLACK),
    uptoMs: usualMs * share,
  }));
  return [...early, last];
}
