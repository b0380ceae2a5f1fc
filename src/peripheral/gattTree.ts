/** The sniffer's services as the objects BlueZ wants to see: pure, no bus. */
import type { CharacteristicAddress } from "../kernel/link.js";
import {
  ALL_SERVICES,
  CONTROL,
  DEVICE_INFORMATION_SERVICE,
  LAYOUT,
  STATUS,
  SWEEP,
} from "../profile/uuids.js";

/** Where BlueZ finds the application, and beside it the advertisement. */
export const APPLICATION_PATH = "/nidor/sniffer";
export const ADVERTISEMENT_PATH = "/nidor/advertisement";

/** @see BlueZ, doc/org.bluez.GattCharacteristic.rst, property Flags */
export type GattFlag = "read" | "write" | "notify";

export interface GattCharacteristic {
  readonly path: string;
  readonly address: CharacteristicAddress;
  readonly flags: readonly GattFlag[];
}

export interface GattService {
  readonly path: string;
  readonly uuid: string;
  readonly characteristics: readonly GattCharacteristic[];
}

/** The services that these characteristics make up, in the order of the profile; a service without any is left out. */
export function gattTree(addresses: readonly CharacteristicAddress[]): GattService[] {
  return ALL_SERVICES.filter((uuid) => addresses.some(({ service }) => service === uuid)).map((uuid, i) => {
    const path = `${APPLICATION_PATH}/service${i}`;
    const own = addresses.filter(({ service }) => service === uuid);
    return {
      path,
      uuid,
      characteristics: own.map((address, j) => ({
        path: `${path}/characteristic${j}`,
        address,
        flags: flagsOf(address),
      })),
    };
  });
}

/** PROFILE.md section 3; BlueZ adds the 0x2902 descriptor to what notifies. */
function flagsOf({ service, characteristic }: CharacteristicAddress): GattFlag[] {
  switch (characteristic) {
    case LAYOUT.characteristic:
      return ["read"];
    case STATUS.characteristic:
      return ["read", "notify"];
    case CONTROL.characteristic:
      return ["write"];
    case SWEEP.characteristic:
      return ["notify"];
    default:
      return service === DEVICE_INFORMATION_SERVICE ? ["read"] : ["read", "notify"];
  }
}
