/** What each characteristic of the virtual sniffer reads as, always by way of the profile's encoders. */
import { sameAddress, type CharacteristicAddress } from "../kernel/link.js";
import { encodeBatteryLevel } from "../profile/battery.js";
import { encodeText } from "../profile/deviceInformation.js";
import { encodeHumidity, encodePressure, encodeTemperature } from "../profile/environment.js";
import { encodeLayout } from "../profile/layout.js";
import { encodeStatus, type SnifferState, type SnifferStatus } from "../profile/status.js";
import { DEVICE_TIME_MODULUS } from "../profile/deviceTime.js";
import {
  BATTERY_LEVEL,
  FIRMWARE_REVISION,
  HARDWARE_REVISION,
  HUMIDITY,
  LAYOUT,
  MANUFACTURER_NAME,
  MODEL_NUMBER,
  PRESSURE,
  STATUS,
  TEMPERATURE,
} from "../profile/uuids.js";
import { caseHumidityPct } from "./airState.js";
import { heaterFailed, sinceBootMs, type VirtualSniffer } from "./snifferState.js";
import { warmUpLeftMs } from "./warmUp.js";

/** Charge at the first moment, and how long one per cent lasts with the heaters on. Invented. */
const FIRST_CHARGE_PCT = 93;
const PER_CENT_LASTS_MS = 6 * 60_000;
/** Heated for a week in the factory, then two hours a day of use. Invented; burn-in is check MX-08. */
const FACTORY_BURN_IN_HOURS = 168;
const HOURS_PER_DAY = 2;
const MS_PER_HOUR = 3_600_000;
const MOST_HOURS = 0xffff;

type Reader = readonly [CharacteristicAddress, (sniffer: VirtualSniffer) => Uint8Array];

const READERS: readonly Reader[] = [
  [LAYOUT, (sniffer) => encodeLayout(sniffer.setup.layout)],
  [STATUS, (sniffer) => encodeStatus(statusOf(sniffer))],
  [TEMPERATURE, (sniffer) => encodeTemperature(sniffer.air.caseC)],
  [HUMIDITY, (sniffer) => encodeHumidity(caseHumidityPct(sniffer.air))],
  [PRESSURE, (sniffer) => encodePressure(sniffer.setup.room.pressurePa)],
  [BATTERY_LEVEL, (sniffer) => encodeBatteryLevel(chargePct(sniffer))],
  [MANUFACTURER_NAME, () => encodeText("Nidor")],
  [MODEL_NUMBER, () => encodeText("Virtual sniffer")],
  [FIRMWARE_REVISION, () => encodeText("1.0")],
  [HARDWARE_REVISION, () => encodeText("model")],
];

/** The bytes that reading a characteristic gives now; undefined where it cannot be read. */
export function valueNow(sniffer: VirtualSniffer, address: CharacteristicAddress): Uint8Array | undefined {
  return READERS.find(([known]) => sameAddress(known, address))?.[1](sniffer);
}

/** What STATUS says now. */
export function statusOf(sniffer: VirtualSniffer): SnifferStatus {
  const { setup, run, elapsedMs } = sniffer;
  const bootMs = sinceBootMs(sniffer);
  const heatedHours = FACTORY_BURN_IN_HOURS + HOURS_PER_DAY * setup.ageDays + elapsedMs / MS_PER_HOUR;
  return {
    state: stateOf(sniffer),
    heaterFault: heaterFailed(sniffer),
    run,
    warmUpLeftMs: warmUpLeftMs(bootMs, setup.layout.warmUpMs),
    deviceTimeMs: bootMs % DEVICE_TIME_MODULUS,
    burnInHours: Math.min(MOST_HOURS, Math.floor(heatedHours)),
  };
}

/** A sweep under way comes before warming: the time left tells that it is still cold. */
function stateOf(sniffer: VirtualSniffer): SnifferState {
  const { setup, activity } = sniffer;
  if (heaterFailed(sniffer)) return "fault";
  if (activity.kind !== "idle") return activity.kind;
  return warmUpLeftMs(sinceBootMs(sniffer), setup.layout.warmUpMs) > 0 ? "warming" : "ready";
}

/** Charge left, per cent, whole; stands at 1 in the end, for a virtual cell never dies. */
export function chargePct({ elapsedMs }: VirtualSniffer): number {
  return Math.max(1, FIRST_CHARGE_PCT - Math.floor(elapsedMs / PER_CENT_LASTS_MS));
}
