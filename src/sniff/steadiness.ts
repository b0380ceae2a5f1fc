import { standardDeviation, leastSquaresSlope } from "../stats/summary.js";
import type { SniffPhase } from "./sniff.js";

/** The window that must be steady. Long against one sweep, short against a minute at the table (common practice). */
export const STEADY_WINDOW_MS = 20_000;
/** Fewest sweeps that a slope and a scatter may be read from. */
export const STEADY_MIN_SWEEPS = 6;
/** Largest drift over the window, as a change of ln R: 3 % (common practice for heated oxides after warm-up). */
export const STEADY_MAX_DRIFT = 0.03;
/** Largest scatter about the drift line, as a standard deviation of ln R: 2 % (common practice). */
export const STEADY_MAX_SCATTER = 0.02;

/** How steady the baseline is, judged by its worst channel. */
export interface Steadiness {
  readonly steady: boolean;
  /** Why not, or null where steady. */
  readonly why: "tooFewSweeps" | "drifting" | "scattered" | null;
  /** Largest |slope| x window over the channels, in ln R. */
  readonly drift: number;
  /** Largest residual standard deviation over the channels, in ln R. */
  readonly scatter: number;
}

/**
 * Is the clean-air baseline steady? A straight line is fitted to ln R of each channel over the last window.
 *
 * @param phase - sweeps so far, shape [sweeps][channels]
 * @returns the verdict over the last `STEADY_WINDOW_MS`; `tooFewSweeps` until the window is filled
 */
export function steadiness(phase: SniffPhase): Steadiness {
  const last = phase.atMs.at(-1);
  const first = phase.atMs[0];
  if (last === undefined || first === undefined) return notYet();
  const from = phase.atMs.findIndex((atMs) => atMs >= last - STEADY_WINDOW_MS);
  const atMs = phase.atMs.slice(from);
  const sweeps = phase.ohm.slice(from);
  const windowFilled = last - first >= STEADY_WINDOW_MS * 0.9;
  if (atMs.length < STEADY_MIN_SWEEPS || !windowFilled) return notYet();
  const channels = sweeps[0]?.length ?? 0;
  const fits = Array.from({ length: channels }, (_, channel) =>
    lineThrough(
      atMs,
      sweeps.map((sweep) => Math.log(sweep[channel] ?? Number.NaN)),
    ),
  );
  return judge(Math.max(...fits.map((fit) => fit.drift)), Math.max(...fits.map((fit) => fit.scatter)));
}

function notYet(): Steadiness {
  return { steady: false, why: "tooFewSweeps", drift: Number.NaN, scatter: Number.NaN };
}

function judge(drift: number, scatter: number): Steadiness {
  if (!(drift <= STEADY_MAX_DRIFT)) return { steady: false, why: "drifting", drift, scatter };
  if (!(scatter <= STEADY_MAX_SCATTER)) return { steady: false, why: "scattered", drift, scatter };
  return { steady: true, why: null, drift, scatter };
}

function lineThrough(atMs: readonly number[], logOhm: readonly number[]) {
  const slope = leastSquaresSlope(atMs, logOhm);
  const start = atMs[0] ?? 0;
  const residuals = logOhm.map((value, i) => value - slope * ((atMs[i] ?? start) - start));
  return { drift: Math.abs(slope) * STEADY_WINDOW_MS, scatter: standardDeviation(residuals) };
}
