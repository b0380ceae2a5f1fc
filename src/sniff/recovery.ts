/** How a sensor comes back to clean air after a plate, and how long that will still take. */
import { leastSquaresSlope, mean, standardDeviation } from "../stats/summary.js";
import { STEADY_MAX_DRIFT } from "./steadiness.js";
import type { SniffPhase } from "./sniff.js";

/** Near enough to the baseline, as a change of ln R: as much as clean air itself may drift (steadiness). */
export const BACK_WITHIN = STEADY_MAX_DRIFT;
/** The newest sweeps that a distance is read from, so that one noisy sweep decides nothing. */
const NOW_SWEEPS = 3;
/** Fewest sweeps that a decay is fitted to: two parameters, and degrees of freedom to see how well. Common practice. */
const FIT_SWEEPS = 6;
/** The window of the fit: the newest decay counts, for a release is no single exponential. Common practice. */
const FIT_WINDOW_MS = 40_000;
/** A slope is believed if it lies so many standard errors below nought (one-sided 2.5 % of a normal one). */
const LEAST_SLOPE_ERRORS = 2;
/** Longer than this no estimate is good for: the room may have changed by then. Common practice. */
const LONGEST_MS = 600_000;

/** Where a release stands. */
export type Recovery =
  | { readonly kind: "noBaseline" } // no clean air of before to come back to
  | { readonly kind: "listening"; readonly away: number | null } // too few sweeps to tell
  | { readonly kind: "back"; readonly away: number }
  /** First-order release: `leftMs` until it is back within the baseline. */
  | { readonly kind: "releasing"; readonly away: number; readonly leftMs: number }
  /** Away, and no end can be told: it does not fall, or so slowly that no time can be named. */
  | { readonly kind: "notTelling"; readonly away: number };

/**
 * Follows the release of one sniff. The distance from the baseline is the root mean square over the channels of
 * ln(R / R in clean air); its logarithm falls on a line while the release is of first order.
 *
 * @param cleanAir - the clean-air phase before the plate; undefined where there was none
 * @param release - sweeps since the plate was left, in time order
 * @returns never a finite time unless the fitted slope stands clear of its own error
 * @see Clifford and Tuma, Sensors and Actuators 3 (1983), 255-281 (transient response; value from memory)
 */
export function recovery(cleanAir: SniffPhase | undefined, release: SniffPhase): Recovery {
  if (cleanAir === undefined || cleanAir.ohm.length === 0) return { kind: "noBaseline" };
  const baseline = meanLogs(cleanAir.ohm.slice(Math.floor(cleanAir.ohm.length / 2)));
  if (release.ohm.length < NOW_SWEEPS) return { kind: "listening", away: null };
  const away = distance(baseline, release.ohm.slice(-NOW_SWEEPS));
  if (away <= BACK_WITHIN) return { kind: "back", away };
  const last = release.atMs.at(-1) ?? 0;
  const from = release.atMs.findIndex((atMs) => atMs >= last - FIT_WINDOW_MS);
  const atMs = release.atMs.slice(from);
  if (atMs.length < FIT_SWEEPS) return { kind: "listening", away };
  const logs = release.ohm.slice(from).map((sweep) => Math.log(Math.max(1e-9, distance(baseline, [sweep]))));
  const line = fittedLine(atMs, logs);
  const leftMs = (Math.log(BACK_WITHIN) - line.atEnd) / line.slope;
  const isTold = line.slope + LEAST_SLOPE_ERRORS * line.error < 0 && leftMs <= LONGEST_MS;
  return isTold ? { kind: "releasing", away, leftMs: Math.max(0, leftMs) } : { kind: "notTelling", away };
}

function meanLogs(sweeps: readonly (readonly number[])[]): number[] {
  return (sweeps[0] ?? []).map((_, channel) =>
    mean(sweeps.map((sweep) => Math.log(sweep[channel] ?? Number.NaN))),
  );
}

function distance(baseline: readonly number[], sweeps: readonly (readonly number[])[]): number {
  const now = meanLogs(sweeps);
  return Math.sqrt(mean(baseline.map((value, channel) => ((now[channel] ?? Number.NaN) - value) ** 2)));
}

/** Least squares through the logarithms, with the slope's standard error. */
function fittedLine(atMs: readonly number[], logs: readonly number[]) {
  const slope = leastSquaresSlope(atMs, logs);
  const middle = mean(atMs);
  const height = mean(logs);
  const residuals = logs.map((value, i) => value - height - slope * ((atMs[i] ?? middle) - middle));
  const spread = Math.sqrt(atMs.reduce((sum, at) => sum + (at - middle) ** 2, 0));
  const scatter = standardDeviation(residuals) * Math.sqrt((logs.length - 1) / (logs.length - 2));
  const end = atMs.at(-1) ?? middle;
  return { slope, error: scatter / spread, atEnd: height + slope * (end - middle) };
}
