/** The whole state of a sniffer that measures: plain data, never changed in place. No clock, no files, no radio. */
import type { AirReading } from "../kernel/air.js";
import type { SnifferLayout } from "../profile/layout.js";
import { MOST_BURN_IN_HOURS, type SnifferState, type SnifferStatus } from "../profile/status.js";
import { DEVICE_TIME_MODULUS } from "../profile/deviceTime.js";

/** Which standard readings the sniffer has. */
export interface Senses {
  readonly temperature: boolean;
  readonly humidity: boolean;
  readonly pressure: boolean;
  readonly battery: boolean;
}

/** What does not change while it runs. */
export interface CoreSetup {
  readonly layout: SnifferLayout;
  readonly senses: Senses;
  readonly model: string;
  readonly firmware: string;
  /** How long a purge takes, in milliseconds. */
  readonly purgeMs: number;
  /** How long the sensors were heated in their life before this start, in milliseconds. */
  readonly heatedBeforeMs: number;
  /** Sequence number of the first sweep frame, 0 to 65535; any start will do (PROFILE.md section 7). */
  readonly firstSequence: number;
}

/** What it is busy with. Times are device time: milliseconds since switching on. */
export type CoreActivity =
  | { readonly kind: "idle" }
  | { readonly kind: "measuring"; readonly sinceMs: number; readonly counter: number }
  | { readonly kind: "purging"; readonly endsAtMs: number };

export interface PeripheralCore {
  readonly setup: CoreSetup;
  readonly nowMs: number;
  /** When the heaters went on; null while they are off. */
  readonly heatersOnAtMs: number | null;
  /** Heated in its life up to when the heaters last went on, in milliseconds. */
  readonly heatedMs: number;
  readonly heaterFault: boolean;
  readonly sensorLost: boolean;
  readonly activity: CoreActivity;
  /** Number of the last start command, 0 if there was none. */
  readonly run: number;
  readonly nextSequence: number;
  /** A value that is missing is not known at the moment. */
  readonly air: AirReading;
  readonly batteryPct: number | null;
  /** What subscribers were last told of STATUS; null before the first time. */
  readonly told: {
    readonly state: SnifferState;
    readonly heaterFault: boolean;
    readonly run: number;
    readonly warm: boolean;
    readonly atMs: number;
  } | null;
}

const MS_PER_HOUR = 3_600_000;

/** A sniffer that was just switched on, its heaters still off. */
export function createCore(setup: CoreSetup): PeripheralCore {
  return {
    setup,
    nowMs: 0,
    heatersOnAtMs: null,
    heatedMs: setup.heatedBeforeMs,
    heaterFault: false,
    sensorLost: false,
    activity: { kind: "idle" },
    run: 0,
    nextSequence: setup.firstSequence,
    air: {},
    batteryPct: null,
    told: null,
  };
}

/** What STATUS says now. PROFILE.md section 5. */
export function statusOf(core: PeripheralCore): SnifferStatus {
  const state = stateOf(core);
  return {
    state,
    heaterFault: core.heaterFault,
    run: core.run,
    warmUpLeftMs: state === "fault" ? 0 : warmUpLeftMs(core),
    deviceTimeMs: core.nowMs % DEVICE_TIME_MODULUS,
    burnInHours: Math.min(MOST_BURN_IN_HOURS, Math.floor(heatedSoFarMs(core) / MS_PER_HOUR)),
  };
}

/** Heated in its life up to now, in milliseconds. */
export function heatedSoFarMs({ heatedMs, heatersOnAtMs, nowMs }: PeripheralCore): number {
  return heatedMs + (heatersOnAtMs === null ? 0 : nowMs - heatersOnAtMs);
}

function stateOf(core: PeripheralCore): SnifferState {
  if (core.heaterFault || core.sensorLost) return "fault";
  if (core.heatersOnAtMs === null) return "cold";
  if (core.activity.kind !== "idle") return core.activity.kind;
  return warmUpLeftMs(core) > 0 ? "warming" : "ready";
}

function warmUpLeftMs({ heatersOnAtMs, nowMs, setup }: PeripheralCore): number {
  const { warmUpMs } = setup.layout;
  return heatersOnAtMs === null ? warmUpMs : Math.max(0, heatersOnAtMs + warmUpMs - nowMs);
}
