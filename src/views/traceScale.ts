import { TRACE_BUCKETS, type TraceWindow } from "../sniff/traceRing.js";

/** Factors that the chart may span up and down: few and far apart, so that the axis rests while the traces move. */
const FACTORS = [1.05, 1.1, 1.25, 1.5, 2, 3, 5, 10, 30, 100, 1000, 1e4, 1e6] as const;

/** What logarithms may be off by: a value doubled still fits under "2 times". */
const ROUNDING = 1e-9;

/** How a window is laid on a field: each channel against its own first value in the window. */
export interface TraceScale {
  /** ln R of each channel at the left edge, shape [channels]; NaN where nothing came. */
  readonly reference: Float64Array;
  /** The top of the field is this many times the first value, the bottom this many times less. */
  readonly factor: number;
}

/**
 * The scale of one window; each look at it costs the same however long the sniffer has run.
 *
 * @param before - kept for the next look, so that nothing is allocated a frame
 */
export function traceScale(window: TraceWindow, before?: TraceScale): TraceScale {
  const channels = window.least.length;
  const reference =
    before?.reference.length === channels ? before.reference : new Float64Array(channels).fill(Number.NaN);
  let largest = 0;
  for (let channel = 0; channel < channels; channel += 1) {
    const [least, most] = [window.least[channel], window.most[channel]];
    if (least === undefined || most === undefined) continue;
    let first = Number.NaN;
    for (let place = TRACE_BUCKETS - 1; place >= 0; place -= 1) {
      const slot = slotAt(window, place);
      if (slot < 0) continue;
      const [low, high] = [least[slot] ?? Number.NaN, most[slot] ?? Number.NaN];
      if (Number.isNaN(low)) continue;
      if (Number.isNaN(first)) first = (Math.log(low) + Math.log(high)) / 2;
      largest = Math.max(largest, Math.log(high) - first, first - Math.log(low));
    }
    reference[channel] = first;
  }
  const factor = FACTORS.find((known) => Math.log(known) >= largest - ROUNDING) ?? Math.exp(largest);
  return { reference, factor };
}

/** Where the bucket lies that is so many places before the newest; -1 before device time 0, or while empty. */
export function slotAt({ newest }: TraceWindow, place: number): number {
  const bucket = newest - place;
  return bucket < 0 ? -1 : bucket % TRACE_BUCKETS;
}
