/** Bytes of a connected sniffer to its new state and to what they mean for a check that is running. */
import type { CharacteristicAddress } from "../kernel/link.js";
import type { Result } from "../kernel/result.js";
import {
  assembleSweeps,
  beginSweeps,
  finishSweeps,
  type AssemblyStep,
  type LinkFault,
} from "../profile/assembleSweeps.js";
import { decodeBatteryLevel } from "../profile/battery.js";
import { nextRun } from "../profile/control.js";
import { decodeHumidity, decodePressure, decodeTemperature } from "../profile/environment.js";
import { deviceTimeFrom } from "../profile/deviceTime.js";
import type { Sweep } from "../profile/sweepFrame.js";
import { decodeStatus, type SnifferStatus } from "../profile/status.js";
import { BATTERY_LEVEL, HUMIDITY, PRESSURE, STATUS, SWEEP, TEMPERATURE } from "../profile/uuids.js";
import type { CheckEvent } from "./checkState.js";
import { lastDeviceTime } from "./resumeSniff.js";
import { tellsFault } from "./tellsFault.js";
import type { ConnectedSniffer, LinkHealth } from "./snifferState.js";

export interface BytesStep {
  readonly sniffer: ConnectedSniffer;
  /** What a check has to know, in order. */
  readonly events: readonly CheckEvent[];
}

/** Sweeps kept for telling how the sniffer does: long enough for a slope, short enough to forget the last plate. */
export const RECENT_SWEEPS = 40;

/** Readings of the air kept: what the case still remembers of the temperature before. Common practice. */
export const RECENT_AIR = 40;

export const HEALTHY: LinkHealth = {
  sweeps: 0,
  framesLost: 0,
  corruptFrames: 0,
  restarts: 0,
  badReadings: 0,
};

/**
 * Takes one value of one characteristic. Never throws, whatever the bytes.
 *
 * @param sniffer - the sniffer before
 * @param address - where the value came from; an unknown one changes nothing
 * @param bytes - the value
 */
export function takeBytes(
  sniffer: ConnectedSniffer,
  address: CharacteristicAddress,
  bytes: Uint8Array,
): BytesStep {
  switch (address.characteristic) {
    case SWEEP.characteristic:
      return sniffer.assembly === null
        ? quiet(sniffer)
        : takeSweeps(sniffer, assembleSweeps(sniffer.assembly, bytes));
    case STATUS.characteristic:
      return takeStatus(sniffer, bytes);
    case TEMPERATURE.characteristic:
      return takeAir(sniffer, "temperatureC", decodeTemperature(bytes));
    case HUMIDITY.characteristic:
      return takeAir(sniffer, "humidityPct", decodeHumidity(bytes));
    case PRESSURE.characteristic:
      return takeAir(sniffer, "pressurePa", decodePressure(bytes));
    case BATTERY_LEVEL.characteristic: {
      const level = decodeBatteryLevel(bytes);
      return quiet(level.ok ? { ...sniffer, batteryPct: level.value } : withBadReading(sniffer));
    }
    default:
      return quiet(sniffer);
  }
}

/**
 * Should STATUS be read once more before it is believed? It has no check value, and what cannot be read, stops a check
 * or begins the warm-up anew may be one wrong octet.
 */
export function needsSecondLook(
  before: ConnectedSniffer,
  address: CharacteristicAddress,
  bytes: Uint8Array,
): boolean {
  if (address.characteristic !== STATUS.characteristic) return false;
  const { sniffer, events } = takeStatus(before, bytes);
  if (sniffer.health.badReadings > before.health.badReadings) return true;
  const isLonger = (sniffer.status?.warmUpLeftMs ?? 0) > (before.status?.warmUpLeftMs ?? Infinity);
  return isLonger || events.some(({ kind }) => kind === "interrupted");
}

/** A new run: sweeps of earlier ones no longer count. */
export function beginRun(sniffer: ConnectedSniffer): ConnectedSniffer {
  const run = nextRun(sniffer.lastRun);
  return { ...sniffer, lastRun: run, assembly: beginSweeps(run, sniffer.layout.channels.length) };
}

/** The end of a run: what still waited for a late frame is let through. */
export function endRun(sniffer: ConnectedSniffer): BytesStep {
  if (sniffer.assembly === null) return quiet(sniffer);
  const step = takeSweeps(sniffer, finishSweeps(sniffer.assembly));
  return { ...step, sniffer: { ...step.sniffer, assembly: null } };
}

const quiet = (sniffer: ConnectedSniffer): BytesStep => ({ sniffer, events: [] });

function withBadReading(sniffer: ConnectedSniffer): ConnectedSniffer {
  return { ...sniffer, health: { ...sniffer.health, badReadings: sniffer.health.badReadings + 1 } };
}

function takeSweeps(sniffer: ConnectedSniffer, step: AssemblyStep): BytesStep {
  const health = step.faults.reduce(countFault, {
    ...sniffer.health,
    sweeps: sniffer.health.sweeps + step.sweeps.length,
  });
  const restarted = step.faults.some((fault) => fault.kind === "restarted");
  const lost = step.faults.reduce((sum, fault) => sum + sweepsLostBy(fault), 0);
  const lastMs = sniffer.recent.at(-1)?.atMs ?? 0;
  // A check that stops there must not take a sweep of the new clock with it.
  const timed = restarted ? beforeClockWentBack(step.sweeps, lastMs) : step.sweeps;
  const events: CheckEvent[] = timed.map(({ atMs, ohm }) => ({ kind: "sweep", sweep: { atMs, ohm } }));
  if (lost > 0 && !restarted) events.unshift({ kind: "sweepsLost", count: lost });
  if (restarted) events.push({ kind: "interrupted", cause: "snifferRestarted" });
  const recent = [...sniffer.recent, ...step.sweeps.map(({ atMs, ohm }) => ({ atMs, ohm }))].slice(
    -RECENT_SWEEPS,
  );
  return { sniffer: { ...sniffer, assembly: step.state, health, recent: restarted ? [] : recent }, events };
}

/** The last one is of the new clock where it came whole in the frame that told of it. */
function beforeClockWentBack(sweeps: readonly Sweep[], lastMs: number): readonly Sweep[] {
  const back = sweeps.findIndex(({ atMs }, i) => atMs < (sweeps[i - 1]?.atMs ?? lastMs));
  return back < 0 ? sweeps : sweeps.slice(0, back);
}

/** Frames that came late, twice or garbled show up as lost sweeps where they did harm. */
function sweepsLostBy(fault: LinkFault): number {
  if (fault.kind === "sweepsLost") return fault.count;
  return fault.kind === "notMeasured" || fault.kind === "wrongChannels" ? 1 : 0;
}

function countFault(health: LinkHealth, fault: LinkFault): LinkHealth {
  switch (fault.kind) {
    case "corruptFrame":
      return { ...health, corruptFrames: health.corruptFrames + 1 };
    case "framesLost":
      return { ...health, framesLost: health.framesLost + fault.count };
    case "restarted":
      return { ...health, restarts: health.restarts + 1 };
    default:
      return health;
  }
}

function takeStatus(sniffer: ConnectedSniffer, bytes: Uint8Array): BytesStep {
  const status = decodeStatus(bytes);
  if (!status.ok) return quiet(withBadReading(sniffer));
  const { state, warmUpLeftMs } = status.value;
  const told = { ...sniffer, status: status.value };
  if (tellsFault(status.value))
    return { sniffer: told, events: [{ kind: "interrupted", cause: "snifferFault" }] };
  if (lostPower(sniffer, status.value)) {
    const health = { ...sniffer.health, restarts: sniffer.health.restarts + 1 };
    const events: CheckEvent[] = [{ kind: "interrupted", cause: "snifferRestarted" }];
    return { sniffer: { ...told, health, assembly: null, recent: [] }, events };
  }
  const leftMs = state === "cold" ? Math.max(1, warmUpLeftMs) : warmUpLeftMs;
  return { sniffer: told, events: [{ kind: "warmUp", leftMs }] };
}

/** A run of ours was under way, and the sniffer knows of none: no sweep of it will ever come. */
function lostPower(before: ConnectedSniffer, { run, deviceTimeMs }: SnifferStatus): boolean {
  const lastMs = lastDeviceTime(before);
  const isOurs = before.assembly !== null && run === 0;
  return isOurs && lastMs !== null && deviceTimeFrom(lastMs, deviceTimeMs) < 0;
}

function takeAir(
  sniffer: ConnectedSniffer,
  quantity: "temperatureC" | "humidityPct" | "pressurePa",
  value: Result<number | null, unknown>,
): BytesStep {
  if (!value.ok) return quiet(withBadReading(sniffer));
  if (value.value === null) return quiet(sniffer);
  const reading = { [quantity]: value.value };
  const air = { ...sniffer.air, ...reading };
  const recentAir = [...sniffer.recentAir, air].slice(-RECENT_AIR);
  return { sniffer: { ...sniffer, air, recentAir }, events: [{ kind: "air", reading }] };
}
