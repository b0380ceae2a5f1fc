import { err, ok, type Result } from "../kernel/result.js";
import { checkWhole } from "./bytes.js";
import { exactly, type FieldError } from "./fieldError.js";

/**
 * Battery Level, characteristic 0x2A19: uint8, 0 to 100 %; 101 to 255 are reserved and so an error.
 *
 * @returns per cent of a full charge
 * @see Bluetooth SIG, org.bluetooth.characteristic.battery_level
 */
export function decodeBatteryLevel(bytes: Uint8Array): Result<number, FieldError> {
  const sized = exactly(bytes, 1);
  if (!sized.ok) return sized;
  const raw = bytes[0] ?? 0;
  return raw > 100 ? err({ kind: "prohibited", raw }) : ok(raw);
}

/** @param levelPct - whole, 0 to 100 @throws {RangeError} */
export function encodeBatteryLevel(levelPct: number): Uint8Array {
  checkWhole("battery level", levelPct, 0, 100);
  return Uint8Array.of(levelPct);
}
