/** One step of device time: air, noise, sweeps, state changes and what is sent. */
import { BATTERY_LEVEL, HUMIDITY, PRESSURE, STATUS, TEMPERATURE } from "../profile/uuids.js";
import { stepAir } from "./airState.js";
import { chanceAt } from "./chance.js";
import { chargePct, statusOf, valueNow } from "./gattValues.js";
import { measure, type Measured } from "./measure.js";
import { stepNoise } from "./noise.js";
import { throughRadio } from "./notification.js";
import { heaterFailed, PURPOSE, sinceBootMs, type VirtualSniffer } from "./snifferState.js";

/** Length of a step: short against gusts, uptake and dwell. */
export const TICK_MS = 250;
/** How often the air readings are sent, and STATUS while the time left counts down. */
const AIR_PERIOD_MS = 2000;
const WARMING_PERIOD_MS = 1000;
/** Purging runs the films hot: what clings is released this many times faster. Invented for the model. */
const PURGE_RELEASE_FACTOR = 6;

/** The sniffer at the end of step number `tick`; a step ends at `tick * TICK_MS`. */
export function stepTick(sniffer: VirtualSniffer, tick: number): Measured {
  const { seed, faults } = sniffer.setup;
  const random = chanceAt(seed, PURPOSE.tick, tick);
  const at = rebooted({ ...sniffer, elapsedMs: tick * TICK_MS });
  const moved = {
    ...at,
    air: stepAir(at.air, airInput(at), TICK_MS, random),
    noise: stepNoise(at.noise, TICK_MS, random),
  };
  const measured = measure(endActivity(moved), random);
  const told = tell(measured.sniffer);
  const sent = [...measured.notifications, ...told.notifications];
  return {
    sniffer: told.sniffer,
    notifications: throughRadio(sent, faults, chanceAt(seed, PURPOSE.radio, tick)),
  };
}

function airInput({ setup, served, activity, elapsedMs }: VirtualSniffer) {
  return {
    room: setup.room,
    plate: served?.plate ?? null,
    servedForMs: served === null ? 0 : Math.max(0, elapsedMs - served.atMs),
    steamFactor: setup.faults.steamFactor,
    releaseFactor: activity.kind === "purging" ? PURGE_RELEASE_FACTOR : 1,
  };
}

/** Power lost for a moment: clock, sequence, run and warmth begin anew. */
function rebooted(sniffer: VirtualSniffer): VirtualSniffer {
  const { rebootAtMs } = sniffer.setup.faults;
  const now = sniffer.elapsedMs;
  if (rebootAtMs === null || rebootAtMs > now || rebootAtMs <= now - TICK_MS) return sniffer;
  return { ...sniffer, bootedAtMs: rebootAtMs, activity: { kind: "idle" }, run: 0, nextSequence: 0 };
}

/** A purge ends by itself; a failed heater ends everything. */
function endActivity(sniffer: VirtualSniffer): VirtualSniffer {
  const { activity, elapsedMs } = sniffer;
  if (heaterFailed(sniffer)) return { ...sniffer, activity: { kind: "idle" } };
  const over = activity.kind === "purging" && activity.endsAtMs <= elapsedMs;
  return over ? { ...sniffer, activity: { kind: "idle" } } : sniffer;
}

/** STATUS at every change and while it counts down, the air regularly, the charge at every change. */
function tell(sniffer: VirtualSniffer): Measured {
  const { state, run, warmUpLeftMs } = statusOf(sniffer);
  const nowMs = sinceBootMs(sniffer);
  const crossed = (periodMs: number) => nowMs % periodMs < TICK_MS;
  const justWarm = warmUpLeftMs === 0 && nowMs - TICK_MS < sniffer.setup.layout.warmUpMs;
  const countingDown = warmUpLeftMs > 0 && crossed(WARMING_PERIOD_MS);
  const charge = chargePct(sniffer);
  const { told } = sniffer;
  const addresses = [
    ...(told?.state !== state || told.run !== run || countingDown || justWarm ? [STATUS] : []),
    ...(crossed(AIR_PERIOD_MS) ? [TEMPERATURE, HUMIDITY, PRESSURE] : []),
    ...(told?.chargePct !== charge ? [BATTERY_LEVEL] : []),
  ];
  return {
    sniffer: { ...sniffer, told: { state, run, chargePct: charge } },
    notifications: addresses.map((address) => ({ address, bytes: valueNow(sniffer, address)! })),
  };
}
