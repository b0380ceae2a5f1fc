/** Channel traces of the last minute, ten minutes and hour, in memory that never grows. */

/** Lengths of the windows that can be looked at. */
export const TRACE_WINDOWS_MS = [60_000, 600_000, 3_600_000] as const;
export type TraceWindowMs = (typeof TRACE_WINDOWS_MS)[number];

/** Buckets a window: about one for each pixel across a phone, at two pixels a point. */
export const TRACE_BUCKETS = 300;

/** One window: the smallest and the largest resistance of each channel in each stretch of time. */
export interface TraceWindow {
  readonly bucketMs: number;
  /** Number of the newest bucket, counted from device time 0; -1 while empty. */
  readonly newest: number;
  /**
   * Shape [channels][TRACE_BUCKETS], in ohm; bucket b stands at b modulo TRACE_BUCKETS. NaN where nothing came: a hole
   * is a hole, never a line across it.
   */
  readonly least: readonly Float32Array[];
  readonly most: readonly Float32Array[];
}

export interface TraceRing {
  readonly channels: number;
  readonly windows: ReadonlyMap<TraceWindowMs, TraceWindow>;
  /** Device time of the newest sweep; null while empty. */
  readonly lastMs: number | null;
  /**
   * Takes one sweep in. Time that goes back, as after a restart, begins anew.
   *
   * @param atMs - device time in milliseconds, >= 0
   * @param ohm - shape [channels], positive and finite
   * @throws {RangeError} if `ohm` has another length
   */
  push(atMs: number, ohm: readonly number[]): void;
  clear(): void;
}

interface OpenWindow {
  bucketMs: number;
  newest: number;
  least: Float32Array[];
  most: Float32Array[];
}

/**
 * Min/max decimation: each bucket keeps both ends of what fell into it, so no spike is lost at any zoom.
 *
 * @param channels - whole, >= 1
 * @throws {RangeError} if there is no channel
 */
export function createTraceRing(channels: number): TraceRing {
  if (!(Number.isInteger(channels) && channels >= 1)) throw new RangeError(`channels: ${channels}`);
  const windows = new Map(TRACE_WINDOWS_MS.map((lengthMs) => [lengthMs, openWindow(lengthMs, channels)]));
  let lastMs: number | null = null;

  function clear(): void {
    lastMs = null;
    for (const window of windows.values()) {
      window.newest = -1;
      for (const values of [...window.least, ...window.most]) values.fill(Number.NaN);
    }
  }

  return {
    channels,
    windows,
    get lastMs() {
      return lastMs;
    },
    clear,
    push(atMs, ohm) {
      if (ohm.length !== channels) throw new RangeError(`${ohm.length} values for ${channels} channels`);
      if (lastMs !== null && atMs < lastMs) clear();
      lastMs = atMs;
      for (const window of windows.values()) pushInto(window, atMs, ohm);
    },
  };
}

function openWindow(lengthMs: number, channels: number): OpenWindow {
  const empty = () =>
    Array.from({ length: channels }, () => new Float32Array(TRACE_BUCKETS).fill(Number.NaN));
  return { bucketMs: lengthMs / TRACE_BUCKETS, newest: -1, least: empty(), most: empty() };
}

function pushInto(window: OpenWindow, atMs: number, ohm: readonly number[]): void {
  const bucket = Math.floor(atMs / window.bucketMs);
  if (bucket > window.newest) openBuckets(window, bucket);
  const slot = bucket % TRACE_BUCKETS;
  ohm.forEach((value, channel) => {
    const [least, most] = [window.least[channel], window.most[channel]];
    if (least === undefined || most === undefined) return;
    // NaN compares false: the first value of a bucket takes both places.
    if (!((least[slot] ?? Number.NaN) <= value)) least[slot] = value;
    if (!((most[slot] ?? Number.NaN) >= value)) most[slot] = value;
  });
}

/** Empties what lies between the newest bucket and the one that begins: its places held a window ago. */
function openBuckets(window: OpenWindow, bucket: number): void {
  const first = Math.max(window.newest + 1, bucket - TRACE_BUCKETS + 1);
  for (let opened = first; opened <= bucket; opened += 1) {
    for (const values of [...window.least, ...window.most]) values[opened % TRACE_BUCKETS] = Number.NaN;
  }
  window.newest = bucket;
}
