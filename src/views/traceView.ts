import type { Gathered } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";

/** How the channels moved away from clean air: ln(R over the plate / R in clean air), drawn on a fixed field. */
export interface TraceView {
  readonly title: string;
  /** Points of each channel, ready for an SVG polyline, on a field `TRACE_WIDTH` by `TRACE_HEIGHT`. */
  readonly lines: readonly string[];
  /** Height of "no change" on that field. */
  readonly zeroY: number;
  readonly topLabel: string;
  readonly bottomLabel: string;
  readonly spoken: string;
}

export const TRACE_WIDTH = 320;
export const TRACE_HEIGHT = 120;
/** A flat trace is drawn flat: the field never shows less than a factor 1.25 up and down. */
const LEAST_SPAN = Math.log(1.25);
/** More lines than this are a carpet; channels are then drawn evenly picked. */
const MOST_LINES = 16;

/** The chart of one sniff so far; null before there are two sweeps over the plate or without clean air. */
export function traceView(gathered: Gathered, words: Words<"check">): TraceView | null {
  const { headspace, cleanAir } = gathered;
  if (headspace.length < 2 || cleanAir.length === 0) return null;
  const baseline = meanLogs(cleanAir.map(({ ohm }) => ohm));
  const ratios = baseline.map((base, channel) =>
    headspace.map(({ ohm }) => Math.log(ohm[channel] ?? Number.NaN) - base),
  );
  const span = Math.max(LEAST_SPAN, ...ratios.flat().filter(Number.isFinite).map(Math.abs));
  const startMs = headspace[0]?.atMs ?? 0;
  const lengthMs = Math.max(1, (headspace.at(-1)?.atMs ?? 0) - startMs);
  const x = (atMs: number) => ((atMs - startMs) / lengthMs) * TRACE_WIDTH;
  const y = (ratio: number) => (TRACE_HEIGHT / 2) * (1 - ratio / span);
  const stride = Math.max(1, Math.ceil(ratios.length / MOST_LINES));
  const { check: text } = words.text;
  const factor = (ratio: number) => `${numberText(Math.exp(ratio), words.formats, 2)} ×`;
  return {
    title: text.headspace.traces,
    lines: ratios
      .filter((_, channel) => channel % stride === 0)
      .map((line) => line.map((ratio, i) => point(x(headspace[i]?.atMs ?? 0), y(ratio))).join(" ")),
    zeroY: TRACE_HEIGHT / 2,
    topLabel: factor(span),
    bottomLabel: factor(-span),
    spoken: text.headspace.tracesSpoken(
      numberText(ratios.length, words.formats),
      numberText(largestFactor(ratios), words.formats, 2),
    ),
  };
}

/** Mean of ln R of each channel, shape [channels]. */
function meanLogs(sweeps: readonly (readonly number[])[]): number[] {
  const channels = sweeps[0]?.length ?? 0;
  return Array.from(
    { length: channels },
    (_, channel) =>
      sweeps.reduce((sum, ohm) => sum + Math.log(ohm[channel] ?? Number.NaN), 0) / Math.max(1, sweeps.length),
  );
}

/** The largest change of the newest sweep, as a factor of at least 1. */
function largestFactor(ratios: readonly (readonly number[])[]): number {
  const newest = ratios.map((line) => Math.abs(line.at(-1) ?? 0)).filter(Number.isFinite);
  return Math.exp(Math.max(0, ...newest));
}

function point(x: number, y: number): string {
  return `${x.toFixed(1)},${Number.isFinite(y) ? y.toFixed(1) : String(TRACE_HEIGHT / 2)}`;
}
