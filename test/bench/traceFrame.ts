import { drawTraces } from "../../src/screens/parts/drawTraces.js";
import { createTraceRing } from "../../src/sniff/traceRing.js";
import { traceScale, type TraceScale } from "../../src/views/traceScale.js";
import { countingPen, FIELD } from "../screens/countingPen.js";

const FRAMES = 200;
const WINDOW_MS = 60_000;

/**
 * Mean cost of one frame of the live traces, one new sweep included, after so many sweeps at ten a second. The pen only
 * remembers: what a browser's canvas adds hangs on the same number of lines.
 *
 * @param nowMs - a clock of spent processor time
 */
export function traceFrameMs(channels: number, sweeps: number, nowMs: () => number): number {
  const ring = createTraceRing(channels);
  const sweepAt = (count: number) =>
    ring.push(
      count * 100,
      Array.from({ length: channels }, (_, channel) => 1e4 * (1 + 0.1 * Math.sin(count / 50 + channel))),
    );
  for (let count = 0; count < sweeps; count += 1) sweepAt(count);
  const window = ring.windows.get(WINDOW_MS);
  if (window === undefined) throw new RangeError("no such window");
  let scale: TraceScale | undefined;
  const from = nowMs();
  for (let frame = 0; frame < FRAMES; frame += 1) {
    sweepAt(sweeps + frame);
    scale = traceScale(window, scale);
    drawTraces(countingPen().pen, FIELD, window, scale);
  }
  return (nowMs() - from) / FRAMES;
}
