import { slotAt, type TraceScale } from "../../views/traceScale.js";
import { TRACE_BUCKETS, type TraceWindow } from "../../views/liveView.js";

/** What drawing needs of a canvas. */
export type Pen = Pick<
  CanvasRenderingContext2D,
  | "beginPath"
  | "clearRect"
  | "fillText"
  | "lineTo"
  | "lineWidth"
  | "moveTo"
  | "setLineDash"
  | "stroke"
  | "strokeStyle"
  | "fillStyle"
  | "font"
  | "textBaseline"
>;

export interface TraceField {
  readonly width: number;
  readonly height: number;
  /** Four colours that those who see few of them tell apart. */
  readonly colours: readonly string[];
  readonly rule: string;
  readonly ink: string;
  readonly font: string;
}

/** Colour and dashes together tell sixteen channels apart; either alone tells four. */
const DASHES: readonly (readonly number[])[] = [[], [7, 3], [2, 3], [9, 3, 2, 3]];
/** Room at the right edge for the channels' numbers, and between two of them. */
const LABEL_WIDTH = 22;
const LABEL_GAP = 12;

/** Draws all channels of one window. The cost hangs on the window's buckets alone, not on how much was measured. */
export function drawTraces(pen: Pen, field: TraceField, window: TraceWindow, scale: TraceScale): void {
  const { width, height } = field;
  const across = width - LABEL_WIDTH;
  const span = Math.log(scale.factor);
  const ends: { readonly channel: number; readonly y: number }[] = [];
  pen.clearRect(0, 0, width, height);
  drawMiddle(pen, field, across);
  pen.lineWidth = 1.6;
  for (let channel = 0; channel < window.least.length; channel += 1) {
    pen.strokeStyle = colourOf(field, channel);
    pen.setLineDash([...(DASHES[Math.floor(channel / field.colours.length) % DASHES.length] ?? [])]);
    const yOf = (ohm: number) =>
      (height / 2) * (1 - (Math.log(ohm) - (scale.reference[channel] ?? Number.NaN)) / span);
    const y = strokeChannel(pen, window, channel, (place) => across * (1 - place / (TRACE_BUCKETS - 1)), yOf);
    if (y !== null) ends.push({ channel, y });
  }
  pen.setLineDash([]);
  labelEnds(pen, field, across + 5, ends);
}

function drawMiddle(pen: Pen, { height, rule }: TraceField, across: number): void {
  pen.strokeStyle = rule;
  pen.lineWidth = 1;
  pen.setLineDash([]);
  pen.beginPath();
  pen.moveTo(0, height / 2);
  pen.lineTo(across, height / 2);
  pen.stroke();
}

/** A slow sniffer leaves buckets empty between two sweeps; this long without a sweep is a hole. */
const HOLE_MS = 10_000;

/**
 * Both ends of each bucket, the one nearer to the pen first, so that a restless trace is no longer than it must be; the
 * pen is lifted over a hole. The height of the newest end, or null where nothing came.
 */
function strokeChannel(
  pen: Pen,
  window: TraceWindow,
  channel: number,
  xOf: (place: number) => number,
  yOf: (ohm: number) => number,
): number | null {
  const [least, most] = [window.least[channel], window.most[channel]];
  if (least === undefined || most === undefined) return null;
  let before = Number.POSITIVE_INFINITY;
  let last: number | null = null;
  let penY = 0;
  pen.beginPath();
  for (let place = TRACE_BUCKETS - 1; place >= 0; place -= 1) {
    const slot = slotAt(window, place);
    const low = slot < 0 ? Number.NaN : (least[slot] ?? Number.NaN);
    if (Number.isNaN(low)) continue;
    const x = xOf(place);
    const yLow = yOf(low);
    const yHigh = yOf(most[slot] ?? low);
    const isNext = before - place <= Math.max(1, HOLE_MS / window.bucketMs);
    const isLowNearer = Math.abs(yLow - penY) < Math.abs(yHigh - penY);
    const first = isLowNearer ? yLow : yHigh;
    const then = isLowNearer ? yHigh : yLow;
    if (isNext) pen.lineTo(x, first);
    else pen.moveTo(x, first);
    if (then !== first) pen.lineTo(x, then);
    before = place;
    penY = then;
    last = (yLow + yHigh) / 2;
  }
  pen.stroke();
  return last;
}

const colourOf = ({ colours, ink }: TraceField, channel: number) => colours[channel % colours.length] ?? ink;

/** Numbers from the top down, each moved below the one before where they would meet; those without room are left out. */
function labelEnds(
  pen: Pen,
  field: TraceField,
  x: number,
  ends: readonly { readonly channel: number; readonly y: number }[],
): void {
  pen.font = field.font;
  pen.textBaseline = "middle";
  let free = LABEL_GAP / 2;
  for (const { channel, y } of [...ends].sort((one, other) => one.y - other.y)) {
    const at = Math.max(y, free);
    if (at > field.height - LABEL_GAP / 2) return;
    pen.fillStyle = colourOf(field, channel);
    pen.fillText(String(channel + 1), x, at);
    free = at + LABEL_GAP;
  }
}
