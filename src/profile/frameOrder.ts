/**
 * Puts the frames of one run back in order and finds what is missing, twice or late. PROFILE.md section 8.
 * Within a run a frame's sequence number follows from its sweep counter and first channel: sequence = origin +
 * counter x frames per sweep + frame in sweep, modulo 2^16. `origin` tells one start command's frames from another's.
 */
import { CHANNELS_PER_FRAME, framesPerSweep, SEQUENCE_MODULUS, type SweepFrame } from "./sweepFrame.js";
import { deviceTimeFrom } from "./deviceTime.js";

/** What went wrong with the order of frames. */
export type OrderFault =
  | { readonly kind: "framesLost"; readonly count: number } // made by the sniffer, never came: come closer
  | { readonly kind: "outOfOrder"; readonly sequence: number } // came late but in time, and was put in its place
  | { readonly kind: "lateFrame"; readonly sequence: number } // came after it was given up for lost: not used
  | { readonly kind: "duplicateFrame"; readonly sequence: number }; // came twice: the second is not used

/** How many places late a frame may come. Common practice: queues on the way swap neighbours, not more. */
export const REORDER_WINDOW = 4;
/** How far back a second coming is recognised. */
const REMEMBERED_FRAMES = 64;

export interface FrameOrder {
  /** Sequence number of channel 0 of sweep 0 of this run, modulo 2^16; null before the first frame. */
  readonly origin: number | null;
  /** Sequence number due next. */
  readonly due: number;
  /** Frames that came before their turn, in order. */
  readonly waiting: readonly SweepFrame[];
  /** The last frames that were let through, oldest first. */
  readonly passed: readonly SweepFrame[];
}

export interface OrderStep {
  readonly order: FrameOrder;
  /** Frames whose turn has come, in order. */
  readonly frames: readonly SweepFrame[];
  readonly faults: readonly OrderFault[];
}

export const NO_FRAMES_YET: FrameOrder = { origin: null, due: 0, waiting: [], passed: [] };

/** Takes one frame of the run; "restarted" if it cannot belong to the same start command as those before it. */
export function takeFrame(
  order: FrameOrder,
  frame: SweepFrame,
  channelCount: number,
): OrderStep | "restarted" {
  if (order.origin === null) return takeFirst(frame, channelCount);
  if (originOf(frame, channelCount) !== order.origin) return "restarted";
  const known = [...order.passed, ...order.waiting].find(({ sequence }) => sequence === frame.sequence);
  if (known !== undefined) {
    if (known.deviceTimeMs !== frame.deviceTimeMs) return "restarted";
    return { order, frames: [], faults: [{ kind: "duplicateFrame", sequence: frame.sequence }] };
  }
  const behind = stepsFrom(frame.sequence, order.due);
  if (behind > 0 && behind <= REMEMBERED_FRAMES) {
    if (!fitsBetween(order.passed, frame)) return "restarted";
    return { order, frames: [], faults: [{ kind: "lateFrame", sequence: frame.sequence }] };
  }
  const newest = order.passed.at(-1);
  if (newest !== undefined && isEarlier(frame.deviceTimeMs, newest.deviceTimeMs)) return "restarted";
  return release(insert(order, frame), REORDER_WINDOW, wasOvertaken(order, frame));
}

/** Lets through what is still waiting, in order; what it waited for is lost. */
export function releaseAll(order: FrameOrder): OrderStep {
  return release(order, 0, []);
}

/** Frames before the first one are missing too; the nearest of them may still come. */
function takeFirst(frame: SweepFrame, channelCount: number): OrderStep {
  const origin = originOf(frame, channelCount);
  const missed = placeInRun(frame, channelCount);
  const mayStillCome = Math.min(missed, REORDER_WINDOW);
  const due = stepsFrom(mayStillCome, frame.sequence);
  const lost: OrderFault[] =
    missed > mayStillCome ? [{ kind: "framesLost", count: missed - mayStillCome }] : [];
  return release({ ...NO_FRAMES_YET, origin, due, waiting: [frame] }, REORDER_WINDOW, lost);
}

function insert(order: FrameOrder, frame: SweepFrame): FrameOrder {
  const ahead = (other: SweepFrame): number => stepsFrom(order.due, other.sequence);
  const waiting = [...order.waiting, frame].sort((left, right) => ahead(left) - ahead(right));
  return { ...order, waiting };
}

function wasOvertaken(order: FrameOrder, frame: SweepFrame): OrderFault[] {
  const ahead = stepsFrom(order.due, frame.sequence);
  const overtaken = order.waiting.some(({ sequence }) => stepsFrom(order.due, sequence) > ahead);
  return overtaken ? [{ kind: "outOfOrder", sequence: frame.sequence }] : [];
}

/** Passes frames on while they are due; gives up those more than `patience` places behind the furthest. */
function release(order: FrameOrder, patience: number, known: readonly OrderFault[]): OrderStep {
  const waiting = [...order.waiting];
  const frames: SweepFrame[] = [];
  const faults = [...known];
  let due = order.due;
  for (let first = waiting[0]; first !== undefined; first = waiting[0]) {
    const furthest = stepsFrom(due, (waiting.at(-1) ?? first).sequence);
    const lost = Math.min(stepsFrom(due, first.sequence), furthest - patience);
    if (lost > 0) {
      faults.push({ kind: "framesLost", count: lost });
      due = (due + lost) % SEQUENCE_MODULUS;
    }
    if (first.sequence !== due) break;
    frames.push(first);
    waiting.shift();
    due = (due + 1) % SEQUENCE_MODULUS;
  }
  const passed = [...order.passed, ...frames].slice(-REMEMBERED_FRAMES);
  return { order: { ...order, due, waiting, passed }, frames, faults };
}

/** Is the frame's time between those of its neighbours in the sequence? Then it is one of theirs, come late. */
function fitsBetween(passed: readonly SweepFrame[], frame: SweepFrame): boolean {
  const isBefore = (other: SweepFrame): boolean =>
    stepsFrom(other.sequence, frame.sequence) < SEQUENCE_MODULUS / 2;
  const before = passed.findLast(isBefore);
  const after = passed.find((other) => !isBefore(other));
  return (
    (before === undefined || !isEarlier(frame.deviceTimeMs, before.deviceTimeMs)) &&
    (after === undefined || !isEarlier(after.deviceTimeMs, frame.deviceTimeMs))
  );
}

function placeInRun(frame: SweepFrame, channelCount: number): number {
  return frame.counter * framesPerSweep(channelCount) + frame.firstChannel / CHANNELS_PER_FRAME;
}

const originOf = (frame: SweepFrame, channelCount: number): number =>
  stepsFrom(placeInRun(frame, channelCount) % SEQUENCE_MODULUS, frame.sequence);

/** Steps forward from one sequence number to another, across the wrap: 0 to 65535. */
const stepsFrom = (from: number, to: number): number => (to - from + SEQUENCE_MODULUS) % SEQUENCE_MODULUS;

/** Of two device times, is the first before the second? */
const isEarlier = (first: number, second: number): boolean => deviceTimeFrom(first, second) > 0;
