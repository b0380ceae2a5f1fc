/**
 * The three readings of the Environmental Sensing Service that a sniffer has.
 *
 * @see Bluetooth GATT Specification Supplement, sections Temperature, Humidity, Pressure
 */
import { err, ok, type Result } from "../kernel/result.js";
import { littleEndian, viewOf } from "./bytes.js";
import { exactly, type FieldError } from "./fieldError.js";

const UNKNOWN_TEMPERATURE = -0x8000;
const COLDEST_HUNDREDTHS = -27315;
const UNKNOWN_HUMIDITY = 0xffff;
const WETTEST_HUNDREDTHS = 10000;

/** Characteristic 0x2A6E, sint16 in 0.01 °C. @returns degrees Celsius, or null for "value is not known" */
export function decodeTemperature(bytes: Uint8Array): Result<number | null, FieldError> {
  const sized = exactly(bytes, 2);
  if (!sized.ok) return sized;
  const raw = viewOf(bytes).getInt16(0, true);
  if (raw === UNKNOWN_TEMPERATURE) return ok(null);
  return raw < COLDEST_HUNDREDTHS ? err({ kind: "prohibited", raw }) : ok(raw / 100);
}

/** @param temperatureC - -273.15 to 327.67, rounded to 0.01; null for "value is not known" @throws {RangeError} */
export function encodeTemperature(temperatureC: number | null): Uint8Array {
  if (temperatureC === null) return littleEndian([UNKNOWN_TEMPERATURE, 2]);
  return littleEndian([toSteps("temperature", temperatureC, 100, COLDEST_HUNDREDTHS, 0x7fff), 2]);
}

/** Characteristic 0x2A6F, uint16 in 0.01 %. @returns relative humidity in per cent, or null for "value is not known" */
export function decodeHumidity(bytes: Uint8Array): Result<number | null, FieldError> {
  const sized = exactly(bytes, 2);
  if (!sized.ok) return sized;
  const raw = viewOf(bytes).getUint16(0, true);
  if (raw === UNKNOWN_HUMIDITY) return ok(null);
  return raw > WETTEST_HUNDREDTHS ? err({ kind: "prohibited", raw }) : ok(raw / 100);
}

/** @param humidityPct - 0 to 100, rounded to 0.01; null for "value is not known" @throws {RangeError} */
export function encodeHumidity(humidityPct: number | null): Uint8Array {
  if (humidityPct === null) return littleEndian([UNKNOWN_HUMIDITY, 2]);
  return littleEndian([toSteps("humidity", humidityPct, 100, 0, WETTEST_HUNDREDTHS), 2]);
}

/** Characteristic 0x2A6D, uint32 in 0.1 Pa; the standard has no "not known" for it. @returns pascal */
export function decodePressure(bytes: Uint8Array): Result<number, FieldError> {
  const sized = exactly(bytes, 4);
  return sized.ok ? ok(viewOf(bytes).getUint32(0, true) / 10) : sized;
}

/** @param pressurePa - 0 to 429 496 729.5, rounded to 0.1 @throws {RangeError} */
export function encodePressure(pressurePa: number): Uint8Array {
  return littleEndian([toSteps("pressure", pressurePa, 10, 0, 0xffffffff), 4]);
}

function toSteps(name: string, value: number, stepsPerUnit: number, lowest: number, highest: number): number {
  const steps = Math.round(value * stepsPerUnit);
  if (!(steps >= lowest && steps <= highest)) throw new RangeError(`${name} out of range: ${value}`);
  return steps;
}
