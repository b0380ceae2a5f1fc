/** The whole state of a virtual sniffer: plain data, never changed in place. */
import { VIRTUAL_SNIFFER_ID, virtualSnifferId } from "./virtualSnifferId.js";
import type { RandomSource } from "../kernel/random.js";
import { PROFILE_VERSION, type SnifferLayout } from "../profile/layout.js";
import type { SnifferState } from "../profile/status.js";
import { restingAir, type AirState } from "./airState.js";
import { chanceAt } from "./chance.js";
import type { FilmAge } from "./channelResistance.js";
import type { Plate } from "./dishes.js";
import { NO_FAULTS, type Faults } from "./faults.js";
import { filmAge } from "./filmAge.js";
import { restingNoise, type NoiseState } from "./noise.js";
import { ORDINARY_ROOM, type RoomAir } from "./roomAir.js";
import { unitNumbered, type UnitTraits } from "./unit.js";

/** What may be chosen when a virtual sniffer is made; every choice has a default. */
export interface VirtualSnifferOptions {
  /** Whole; the same seed and calls give the same bytes. */
  readonly seed: number;
  readonly unit?: UnitTraits;
  readonly layout?: SnifferLayout;
  readonly room?: RoomAir;
  readonly faults?: Partial<Faults>;
  /** Days of use behind it, whole: drift and loss of sensitivity. Default 0. */
  readonly ageDays?: number;
  /** Seed of the drift over those days: one a unit, so that its days hang together. Default: the unit's number. */
  readonly unitSeed?: number;
  /** How long it has been switched on already, in milliseconds. Default 0: cold. */
  readonly uptimeMs?: number;
}

export type Setup = Required<Omit<VirtualSnifferOptions, "faults">> & { readonly faults: Faults };

/** What the sniffer is busy with. Times count from when it was made. */
export type Activity =
  | { readonly kind: "idle" }
  | {
      readonly kind: "measuring";
      readonly counter: number;
      readonly sweepStartMs: number;
      /** Resistances read so far in this sweep; null until a channel's turn. */
      readonly ohm: readonly (number | null)[];
    }
  | { readonly kind: "purging"; readonly endsAtMs: number };

export interface VirtualSniffer {
  readonly setup: Setup;
  readonly age: FilmAge;
  /** Virtual time since it was made, in milliseconds. */
  readonly elapsedMs: number;
  /** When it was last switched on, on that clock; negative if before it was made. */
  readonly bootedAtMs: number;
  readonly air: AirState;
  readonly noise: NoiseState;
  readonly served: { readonly plate: Plate; readonly atMs: number } | null;
  readonly activity: Activity;
  /** Number of the last start command, 0 if there was none since switching on. */
  readonly run: number;
  /** Sequence number of the next sweep frame. */
  readonly nextSequence: number;
  /** What subscribers were last told of STATUS and the charge; null before the first step. */
  readonly told: { readonly state: SnifferState; readonly run: number; readonly chargePct: number } | null;
}

/** Two sensors of unlike films, four heater steps each, read side by side: eight channels in two seconds. */
export const DEMO_LAYOUT: SnifferLayout = {
  profileVersion: PROFILE_VERSION,
  snifferId: VIRTUAL_SNIFFER_ID,
  channels: [0, 1].flatMap((sensor) =>
    [200, 260, 320, 380].map((heaterC) => ({ sensor, heaterC, dwellMs: 500 })),
  ),
  sweepPeriodMs: 2000,
  warmUpMs: 60_000,
};

/** Uses of chance, so that no two share a stream. */
export const PURPOSE = { start: 1, tick: 2, radio: 3, drift: 4 } as const;

/**
 * A virtual sniffer, switched on, in clean room air, with nothing under it.
 *
 * @throws {RangeError} if the seed or the days are not whole, or the days or uptime negative
 */
export function createVirtualSniffer(options: VirtualSnifferOptions): VirtualSniffer {
  const setup = withDefaults(options);
  if (!Number.isInteger(setup.seed)) throw new RangeError(`seed: ${setup.seed}`);
  if (!(setup.uptimeMs >= 0)) throw new RangeError(`uptime: ${setup.uptimeMs}`);
  const random: RandomSource = chanceAt(setup.seed, PURPOSE.start, 0);
  return {
    setup,
    age: filmAge(setup.ageDays, setup.faults.sensitivityLossPerDay, (day) =>
      chanceAt(setup.unitSeed, PURPOSE.drift, day),
    ),
    elapsedMs: 0,
    bootedAtMs: -setup.uptimeMs,
    air: restingAir(setup.room, random),
    noise: restingNoise(setup.layout.channels.length, random),
    served: null,
    activity: { kind: "idle" },
    run: 0,
    nextSequence: 0,
    told: null,
  };
}

/** Time since switching on, in whole milliseconds. */
export function sinceBootMs(sniffer: VirtualSniffer): number {
  return Math.floor(sniffer.elapsedMs - sniffer.bootedAtMs);
}

/** Has a heater failed by now? */
export function heaterFailed({ setup, elapsedMs }: VirtualSniffer): boolean {
  const { heaterFailsAtMs } = setup.faults;
  return heaterFailsAtMs !== null && heaterFailsAtMs <= elapsedMs;
}

function withDefaults(options: VirtualSnifferOptions): Setup {
  const faults = { ...NO_FAULTS, ...options.faults };
  const { unitNumber } = faults;
  return {
    seed: options.seed,
    unit: options.unit ?? unitNumbered(unitNumber),
    layout: options.layout ?? { ...DEMO_LAYOUT, snifferId: virtualSnifferId(unitNumber) },
    room: options.room ?? ORDINARY_ROOM,
    faults,
    ageDays: options.ageDays ?? 0,
    unitSeed: options.unitSeed ?? unitNumber,
    uptimeMs: options.uptimeMs ?? 0,
  };
}
