/**
 * Puts the frames of one run back in order and finds what is missing, twice or late. In a run a frame's sequence
 * number follows from its sweep counter and first channel, so one number, `origin`, ties them all together.
 */
import { framesPerSweep, SEQUENCE_MODULUS, type SweepFrame } from "./sweepFrame.js";

/** What went wrong with the order of frames; each is about resistances, none about a connection. */
export type OrderFault =
  | { readonly kind: "framesLost"; readonly count: number } // made by the sniffer, never came: come closer
  | { readonly kind: "outOfOrder"; readonly sequence: number } // came late but in time, and was put in its place
  | { readonly kind: "lateFrame"; readonly sequence: number } // came after it was given up for lost: not used
  | { readonly kind: "duplicateFrame"; readonly sequence: number } // came twice: the second is not used
  | { readonly kind: "restarted" }; // the sniffer began anew, perhaps by losing power: start the sniff again

/** How many places late a frame may come. Common practice: a radio queue reorders neighbours, not more. */
export const REORDER_WINDOW = 4;
/** How far back a second coming is recognised. */
const REMEMBERED_FRAMES = 64;
const HALF_TIME = 0x80000000;

export interface FrameOrder {
  readonly channelCount: number;
  /** Sequence number that counter 0, channel 0 of this run has, modulo 2^16; null before the first frame. */
  readonly origin: number | null;
  /** Sequence number due next. */
  readonly due: number;
  /** Frames that came before their turn, by sequence number. */
  readonly waiting: readonly SweepFrame[];
  /** The last frames that were let through, oldest first. */
  readonly passed: readonly SweepFrame[];
}

export interface OrderStep {
  readonly order: FrameOrder;
  readonly frames: readonly SweepFrame[];
  readonly faults: readonly OrderFault[];
}

export const beginOrder = (channelCount: number): FrameOrder => ({
  channelCount,
  origin: null,
  due: 0,
  waiting: [],
  passed: [],
});
