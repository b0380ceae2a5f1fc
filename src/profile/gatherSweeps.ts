/** Frames in their order to whole sweeps; a sweep with anything missing is named, never guessed. */
import { DEVICE_TIME_MODULUS } from "./deviceTime.js";
import { COUNTER_MODULUS, type Sweep, type SweepFrame } from "./sweepFrame.js";

/** What went wrong with a sweep. Counters are unwrapped: 0 is the first sweep of the run. */
export type SweepFault =
  | { readonly kind: "sweepsLost"; readonly firstCounter: number; readonly count: number } // their frames did not all come: come closer
  | { readonly kind: "notMeasured"; readonly counter: number; readonly channels: readonly number[] }; // the sniffer had no reading: look at its heater

export interface Gathering {
  /** Counter of the sweep under way, or due next. */
  readonly counter: number;
  /** Time of the latest frame: as sent, and unwrapped; null before the first. */
  readonly clock: { readonly sentMs: number; readonly atMs: number } | null;
  /** The sweep under way. */
  readonly open: {
    readonly atMs: number;
    readonly broken: boolean;
    readonly ohm: readonly (number | null)[];
  } | null;
}

export interface GatherStep {
  readonly gathering: Gathering;
  readonly sweeps: readonly Sweep[];
  readonly faults: readonly SweepFault[];
}

export const NOTHING_GATHERED: Gathering = { counter: 0, clock: null, open: null };

/** Takes the next frame in order. A frame that does not follow from the one before breaks its sweep. */
export function gatherFrame(before: Gathering, frame: SweepFrame): GatherStep {
  const skipped = forward(before.counter, frame.counter, COUNTER_MODULUS);
  const counter = before.counter + skipped;
  const atMs = unwrapTime(before.clock, frame.deviceTimeMs);
  const open = (skipped === 0 ? before.open : null) ?? { atMs, broken: false, ohm: [] };
  const follows = open.atMs === atMs && open.ohm.length === frame.firstChannel;
  const grown = { ...open, broken: open.broken || !follows, ohm: [...open.ohm, ...frame.ohm] };
  const clock = { sentMs: frame.deviceTimeMs, atMs };
  const faults: SweepFault[] =
    skipped === 0 ? [] : [{ kind: "sweepsLost", firstCounter: before.counter, count: skipped }];
  if (!frame.last) return { gathering: { counter, clock, open: grown }, sweeps: [], faults };
  const closed = closeSweep(frame.run, counter, grown);
  return {
    gathering: { counter: counter + 1, clock, open: null },
    sweeps: closed.sweeps,
    faults: [...faults, ...closed.faults],
  };
}

/** Gives up the sweep under way. */
export function giveUpOpenSweep(before: Gathering): GatherStep {
  if (before.open === null) return { gathering: before, sweeps: [], faults: [] };
  return {
    gathering: { ...before, counter: before.counter + 1, open: null },
    sweeps: [],
    faults: [{ kind: "sweepsLost", firstCounter: before.counter, count: 1 }],
  };
}

function closeSweep(
  run: number,
  counter: number,
  open: NonNullable<Gathering["open"]>,
): Pick<GatherStep, "sweeps" | "faults"> {
  if (open.broken) return { sweeps: [], faults: [{ kind: "sweepsLost", firstCounter: counter, count: 1 }] };
  const ohm = open.ohm.filter((value) => value !== null);
  if (ohm.length === open.ohm.length) return { sweeps: [{ run, counter, atMs: open.atMs, ohm }], faults: [] };
  const channels = open.ohm.flatMap((value, channel) => (value === null ? [channel] : []));
  return { sweeps: [], faults: [{ kind: "notMeasured", counter, channels }] };
}

/** Times only go forward within a run, so each is the next one after the last that fits modulo 2^32. */
function unwrapTime(clock: Gathering["clock"], sentMs: number): number {
  return clock === null ? sentMs : clock.atMs + forward(clock.sentMs, sentMs, DEVICE_TIME_MODULUS);
}

const forward = (from: number, to: number, modulus: number): number =>
  (((to - from) % modulus) + modulus) % modulus;
