/** What happens to a measuring sniffer, and what it then sends: a pure step from state and event. */
import type { AirReading } from "../kernel/air.js";
import type { CharacteristicAddress } from "../kernel/link.js";
import { encodeSweep, framesPerSweep, SEQUENCE_MODULUS } from "../profile/sweepFrame.js";
import { BATTERY_LEVEL, HUMIDITY, PRESSURE, STATUS, SWEEP, TEMPERATURE } from "../profile/uuids.js";
import { heatedSoFarMs, statusOf, type PeripheralCore } from "./core.js";
import { readValue } from "./coreValues.js";
import type { PeripheralNotification } from "./peripheral.js";

export type CoreEvent =
  | { readonly kind: "time" } // nothing but that time passed
  | { readonly kind: "heatersOn" }
  | { readonly kind: "heatersOff" }
  | { readonly kind: "heaterFault"; readonly on: boolean } // a heater could not be set; or could again
  | { readonly kind: "sensorLost" } // nothing can be read any more
  | { readonly kind: "sensorBack" } // it can be read again: cold, as after switching on
  /** One resistance a channel, in ohm; null where it could not be measured. */
  | { readonly kind: "sweep"; readonly startedAtMs: number; readonly ohm: readonly (number | null)[] }
  | { readonly kind: "air"; readonly reading: AirReading }
  | { readonly kind: "battery"; readonly pct: number | null }
  | { readonly kind: "nothingMoreToPlay" }; // the recording ended

export interface CoreStep {
  readonly core: PeripheralCore;
  readonly notifications: readonly PeripheralNotification[];
}

/** How often STATUS is sent while the warm-up counts down; PROFILE.md section 5 asks for 5 s or less. */
export const WARMING_STATUS_MS = 2000;

/**
 * The sniffer after an event.
 *
 * @param nowMs - device time of the event, in milliseconds; whole; an earlier one than before counts as now
 * @throws {RangeError} if a sweep does not have one resistance a channel
 */
export function stepCore(core: PeripheralCore, nowMs: number, event: CoreEvent): CoreStep {
  const later = withPurgeEnded({ ...core, nowMs: Math.max(core.nowMs, Math.floor(nowMs)) });
  const changed = apply(later, event);
  const told = tellStatus(changed.core);
  return { core: told.core, notifications: [...told.notifications, ...changed.notifications] };
}

const silent = (core: PeripheralCore): CoreStep => ({ core, notifications: [] });

function apply(core: PeripheralCore, event: CoreEvent): CoreStep {
  switch (event.kind) {
    case "time":
      return silent(core);
    case "heatersOn":
      return silent(withHeatersOn(core));
    case "heatersOff":
      return silent(withHeatersOff(core));
    case "heaterFault":
      return silent({ ...(event.on ? withHeatersOff(core) : core), heaterFault: event.on });
    case "sensorLost":
      return silent({ ...withHeatersOff(core), sensorLost: true });
    case "sensorBack":
      return silent({ ...core, sensorLost: false });
    case "sweep":
      return takeSweep(core, event.startedAtMs, event.ohm);
    case "air":
      return withNews({ ...core, air: event.reading }, [TEMPERATURE, HUMIDITY, PRESSURE]);
    case "battery":
      if (event.pct === core.batteryPct) return silent(core);
      return withNews({ ...core, batteryPct: event.pct }, [BATTERY_LEVEL]);
    case "nothingMoreToPlay":
      return silent(core.activity.kind === "measuring" ? idle(core) : core);
  }
}

const idle = (core: PeripheralCore): PeripheralCore => ({ ...core, activity: { kind: "idle" } });

/** At fault they stay off: what cannot be measured is not heated. */
function withHeatersOn(core: PeripheralCore): PeripheralCore {
  if (core.heaterFault || core.sensorLost) return core;
  return { ...core, heatersOnAtMs: core.heatersOnAtMs ?? core.nowMs };
}

function withHeatersOff(core: PeripheralCore): PeripheralCore {
  return { ...idle(core), heatedMs: heatedSoFarMs(core), heatersOnAtMs: null };
}

function withPurgeEnded(core: PeripheralCore): PeripheralCore {
  const { activity, nowMs } = core;
  return activity.kind === "purging" && activity.endsAtMs <= nowMs ? idle(core) : core;
}

/** A sweep that began before the start command belongs to no run, and is not sent. */
function takeSweep(core: PeripheralCore, startedAtMs: number, ohm: readonly (number | null)[]): CoreStep {
  const { activity, run, nextSequence, setup } = core;
  const channelCount = setup.layout.channels.length;
  if (ohm.length !== channelCount) throw new RangeError(`${ohm.length} resistances, not ${channelCount}`);
  if (activity.kind !== "measuring" || startedAtMs < activity.sinceMs) return silent(core);
  const { counter } = activity;
  const sweep = { run, counter, atMs: Math.floor(startedAtMs), ohm: ohm.map(asSent) };
  return {
    core: {
      ...core,
      activity: { ...activity, counter: counter + 1 },
      nextSequence: (nextSequence + framesPerSweep(channelCount)) % SEQUENCE_MODULUS,
    },
    notifications: encodeSweep(sweep, nextSequence).map((bytes) => ({ address: SWEEP, bytes })),
  };
}

/** NaN stands for "not measured", and so does what is no resistance as a 32-bit float (PROFILE.md section 7). */
function asSent(ohm: number | null): number {
  const sent = Math.fround(ohm ?? Number.NaN);
  return sent > 0 && Number.isFinite(sent) ? sent : Number.NaN;
}

function tellStatus(core: PeripheralCore): CoreStep {
  const { state, heaterFault, run, warmUpLeftMs } = statusOf(core);
  const { told, nowMs } = core;
  const warm = warmUpLeftMs === 0;
  const changed =
    told?.state !== state || told.heaterFault !== heaterFault || told.run !== run || told.warm !== warm;
  // A run may begin before the film has settled: the phone must hear when it has.
  const heating = state === "warming" || state === "measuring";
  const counting = heating && !warm && told !== null && nowMs - told.atMs >= WARMING_STATUS_MS;
  if (!changed && !counting) return silent(core);
  return withNews({ ...core, told: { state, heaterFault, run, warm, atMs: nowMs } }, [STATUS]);
}

/** Sends the values of these characteristics, as far as the sniffer has them and knows them. */
function withNews(core: PeripheralCore, addresses: readonly CharacteristicAddress[]): CoreStep {
  const notifications = addresses.flatMap((address) => {
    const value = readValue(core, address);
    return value.ok ? [{ address, bytes: value.value }] : [];
  });
  return { core, notifications };
}
