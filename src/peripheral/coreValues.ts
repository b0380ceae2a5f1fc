/** What each characteristic of a measuring sniffer reads as, always by way of the profile's encoders. */
import { sameAddress, type CharacteristicAddress } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import { encodeBatteryLevel } from "../profile/battery.js";
import { encodeText } from "../profile/deviceInformation.js";
import { encodeHumidity, encodePressure, encodeTemperature } from "../profile/environment.js";
import { encodeLayout } from "../profile/layout.js";
import { encodeStatus } from "../profile/status.js";
import {
  BATTERY_LEVEL,
  CONTROL,
  FIRMWARE_REVISION,
  HUMIDITY,
  LAYOUT,
  MODEL_NUMBER,
  PRESSURE,
  STATUS,
  SWEEP,
  TEMPERATURE,
} from "../profile/uuids.js";
import { statusOf, type PeripheralCore, type Senses } from "./core.js";
import type { ReadRefusal } from "./peripheral.js";

/** What a sniffer with these senses has. A reading without a sensor has no characteristic (PROFILE.md section 9). */
export function addressesOf(senses: Senses): CharacteristicAddress[] {
  return [
    LAYOUT,
    STATUS,
    CONTROL,
    SWEEP,
    ...(senses.temperature ? [TEMPERATURE] : []),
    ...(senses.humidity ? [HUMIDITY] : []),
    ...(senses.pressure ? [PRESSURE] : []),
    ...(senses.battery ? [BATTERY_LEVEL] : []),
    MODEL_NUMBER,
    FIRMWARE_REVISION,
  ];
}

/** The bytes that reading a characteristic gives now. */
export function readValue(
  core: PeripheralCore,
  address: CharacteristicAddress,
): Result<Uint8Array, ReadRefusal> {
  const known = addressesOf(core.setup.senses).find((candidate) => sameAddress(candidate, address));
  if (known === undefined) return err("absent");
  const { air, batteryPct, setup } = core;
  switch (known) {
    case LAYOUT:
      return ok(encodeLayout(setup.layout));
    case STATUS:
      return ok(encodeStatus(statusOf(core)));
    case TEMPERATURE:
      return ok(encodeTemperature(air.temperatureC ?? null));
    case HUMIDITY:
      return ok(encodeHumidity(air.humidityPct ?? null));
    case PRESSURE:
      return air.pressurePa === undefined ? err("unknown") : ok(encodePressure(air.pressurePa));
    case BATTERY_LEVEL:
      return batteryPct === null ? err("unknown") : ok(encodeBatteryLevel(batteryPct));
    case MODEL_NUMBER:
      return ok(encodeText(setup.model));
    case FIRMWARE_REVISION:
      return ok(encodeText(setup.firmware));
    default:
      return err("refused");
  }
}
