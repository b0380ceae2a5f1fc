/** Who is who on the sniffer: service and characteristic UUIDs, as PROFILE.md lists them. */
import type { CharacteristicAddress } from "../kernel/link.js";

/**
 * The 128-bit form of a 16- or 32-bit assigned number, lower case.
 *
 * @param assigned - whole, 0 to 0xffffffff
 * @throws {RangeError} outside that range
 * @see Web Bluetooth draft, BluetoothUUID.canonicalUUID; Bluetooth Core, Vol 3 Part B, 2.5.1 (the base UUID)
 */
export function canonicalUuid(assigned: number): string {
  if (!Number.isInteger(assigned) || assigned < 0 || assigned > 0xffffffff) {
    throw new RangeError(`not an assigned number: ${assigned}`);
  }
  return `${assigned.toString(16).padStart(8, "0")}-0000-1000-8000-00805f9b34fb`;
}

/** The sniffer's own numbers: one random UUID (version 4), counted in its second pair of octets. */
const own = (number: number): string =>
  `0a52${number.toString(16).padStart(4, "0")}-3493-4df2-96b8-59222e25dd2c`;

export const SNIFFER_SERVICE = own(1);
export const ENVIRONMENTAL_SENSING_SERVICE = canonicalUuid(0x181a);
export const BATTERY_SERVICE = canonicalUuid(0x180f);
export const DEVICE_INFORMATION_SERVICE = canonicalUuid(0x180a);

/** Every service the app may reach; Web Bluetooth opens no other (the draft's "allowed services"). */
export const ALL_SERVICES: readonly string[] = [
  SNIFFER_SERVICE,
  ENVIRONMENTAL_SENSING_SERVICE,
  BATTERY_SERVICE,
  DEVICE_INFORMATION_SERVICE,
];

const at = (service: string, characteristic: string): CharacteristicAddress => ({ service, characteristic });

/** Which channels there are and how long they take. Read. */
export const LAYOUT = at(SNIFFER_SERVICE, own(2));
/** What the sniffer is doing. Read, notify. */
export const STATUS = at(SNIFFER_SERVICE, own(3));
/** Start, stop, purge. Write with response. */
export const CONTROL = at(SNIFFER_SERVICE, own(4));
/** Resistances. Notify only. */
export const SWEEP = at(SNIFFER_SERVICE, own(5));

export const TEMPERATURE = at(ENVIRONMENTAL_SENSING_SERVICE, canonicalUuid(0x2a6e));
export const HUMIDITY = at(ENVIRONMENTAL_SENSING_SERVICE, canonicalUuid(0x2a6f));
export const PRESSURE = at(ENVIRONMENTAL_SENSING_SERVICE, canonicalUuid(0x2a6d));

export const BATTERY_LEVEL = at(BATTERY_SERVICE, canonicalUuid(0x2a19));

export const MANUFACTURER_NAME = at(DEVICE_INFORMATION_SERVICE, canonicalUuid(0x2a29));
export const MODEL_NUMBER = at(DEVICE_INFORMATION_SERVICE, canonicalUuid(0x2a24));
export const FIRMWARE_REVISION = at(DEVICE_INFORMATION_SERVICE, canonicalUuid(0x2a26));
export const HARDWARE_REVISION = at(DEVICE_INFORMATION_SERVICE, canonicalUuid(0x2a27));
