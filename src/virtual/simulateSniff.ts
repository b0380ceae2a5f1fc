import { sameAddress } from "../kernel/link.js";
/** One whole sniff with the virtual sniffer, decoded from its own notifications like any other. */
import type { AirReading } from "../kernel/air.js";
import type { Channel } from "../kernel/channel.js";
import type { GroupTruths } from "../kernel/groups.js";
import { assembleSweeps, beginSweeps, finishSweeps } from "../profile/assembleSweeps.js";
import { encodeControl } from "../profile/control.js";
import { decodeHumidity, decodePressure, decodeTemperature } from "../profile/environment.js";
import type { Sweep } from "../profile/sweepFrame.js";
import { CONTROL, HUMIDITY, PRESSURE, SWEEP, TEMPERATURE } from "../profile/uuids.js";
import { chanceAt } from "./chance.js";
import { plateOf, type Dish } from "./dishes.js";

import {
  advance,
  createVirtualSniffer,
  serve,
  writeValue,
  type Notification,
  type VirtualSnifferOptions,
} from "./virtualSniffer.js";

export interface SimulateOptions extends Omit<VirtualSnifferOptions, "uptimeMs"> {
  readonly dish: Dish;
  readonly cleanAirMs: number;
  readonly headspaceMs: number;
  /** ISO 8601 instant. */
  readonly takenAt: string;
  readonly id: string;
  readonly plate: string;
  readonly occasion: string;
  /** Chance of the plate itself; as `seed` if left out. The same one under two sniffers is one plate sniffed twice. */
  readonly plateSeed?: number;
  /** How long the sniffer was on before; default ten minutes, so warm. */
  readonly uptimeMs?: number;
}

/** One phase in the shape of the sniff file; atMs counts from the phase's first sweep. */
export interface SimulatedPhase {
  readonly atMs: readonly number[];
  readonly ohm: readonly (readonly number[])[];
}

/** In the shape of the sniff file, format nidor-sniff/1. */
export interface SimulatedSniff {
  readonly format: "nidor-sniff/1";
  readonly id: string;
  readonly takenAt: string;
  readonly sniffer: { readonly id: string; readonly channels: readonly Channel[] };
  readonly plate: string;
  readonly occasion: string;
  readonly dish: string;
  readonly groups: GroupTruths;
  readonly cleanAir: SimulatedPhase;
  readonly headspace: SimulatedPhase;
  readonly air: { readonly cleanAir: AirReading; readonly headspace: AirReading };
  readonly cleanAirAgeMs: number;
}

const TEN_MINUTES_MS = 600_000;
const RUN = 1;
/** The plate's own chance, beside the sniffer's. */
const PLATE_PURPOSE = 100;

/**
 * Sniffs clean air, then one plate of a dish. A sweep that began before the plate came and ended after it
 * is in neither phase.
 *
 * @throws {RangeError} if a phase is too short to hold one whole sweep
 */
export function simulateSniff(options: SimulateOptions): SimulatedSniff {
  const { dish, cleanAirMs, headspaceMs } = options;
  const made = createVirtualSniffer({ ...options, uptimeMs: options.uptimeMs ?? TEN_MINUTES_MS });
  const plate = plateOf(dish, chanceAt(options.plateSeed ?? options.seed, PLATE_PURPOSE, 0));
  const { layout } = made.setup;
  const started = writeValue(made, CONTROL, encodeControl({ kind: "start", run: RUN })).sniffer;
  const inAir = advance(started, cleanAirMs);
  const overPlate = advance(serve(inAir.sniffer, plate), headspaceMs);
  const all = [...inAir.notifications, ...overPlate.notifications];
  const sweeps = sweepsIn(all, layout.channels.length);
  const servedAtMs = cleanAirMs - made.bootedAtMs;
  const clean = sweeps.filter((sweep) => sweep.atMs + layout.sweepPeriodMs <= servedAtMs);
  const over = sweeps.filter((sweep) => sweep.atMs >= servedAtMs);
  return {
    format: "nidor-sniff/1",
    id: options.id,
    takenAt: options.takenAt,
    sniffer: { id: layout.snifferId, channels: layout.channels },
    plate: options.plate,
    occasion: options.occasion,
    dish: dish.name,
    groups: plate.groups,
    cleanAir: phaseOf(clean),
    headspace: phaseOf(over),
    air: { cleanAir: lastAir(inAir.notifications), headspace: lastAir(overPlate.notifications) },
    cleanAirAgeMs: over[0]!.atMs - clean.at(-1)!.atMs,
  };
}

/** The whole sweeps among notifications, through the profile's own assembler. */
function sweepsIn(notifications: readonly Notification[], channelCount: number): Sweep[] {
  let assembly = beginSweeps(RUN, channelCount);
  const sweeps: Sweep[] = [];
  for (const { address, bytes } of notifications) {
    if (!sameAddress(address, SWEEP)) continue;
    const step = assembleSweeps(assembly, bytes);
    assembly = step.state;
    sweeps.push(...step.sweeps);
  }
  return [...sweeps, ...finishSweeps(assembly).sweeps];
}

function phaseOf(sweeps: readonly Sweep[]): SimulatedPhase {
  const first = sweeps[0];
  if (first === undefined) throw new RangeError("phase too short for a sweep");
  return {
    atMs: sweeps.map((sweep) => sweep.atMs - first.atMs),
    ohm: sweeps.map((sweep) => sweep.ohm),
  };
}

/** The newest value of each air reading, as the app keeps them. */
function lastAir(notifications: readonly Notification[]): AirReading {
  const last = (wanted: typeof TEMPERATURE) =>
    notifications.findLast(({ address }) => sameAddress(address, wanted))?.bytes;
  const temperature = last(TEMPERATURE);
  const humidity = last(HUMIDITY);
  const pressure = last(PRESSURE);
  const temperatureC = temperature === undefined ? null : valueOr(decodeTemperature(temperature), null);
  const humidityPct = humidity === undefined ? null : valueOr(decodeHumidity(humidity), null);
  const pressurePa = pressure === undefined ? null : valueOr(decodePressure(pressure), null);
  return {
    ...(temperatureC === null ? {} : { temperatureC }),
    ...(humidityPct === null ? {} : { humidityPct }),
    ...(pressurePa === null ? {} : { pressurePa }),
  };
}

function valueOr<T>(result: { ok: true; value: T } | { ok: false }, otherwise: T): T {
  return result.ok ? result.value : otherwise;
}
