/** The characteristics of one connection: discovered when first used, and who listens to which. */
import type { CharacteristicAddress } from "../kernel/link.js";
import { tapNotifications, type NotificationTap } from "./notificationTap.js";

export interface Found {
  readonly characteristic: BluetoothRemoteGATTCharacteristic;
  readonly tap: NotificationTap;
}

/** Its promises reject with the browser's own exceptions. */
export interface GattTable {
  find(address: CharacteristicAddress): Promise<Found>;
  listen(address: CharacteristicAddress, onBytes: (bytes: Uint8Array) => void): Promise<void>;
  /** Discovers anew, and takes up every subscription again. */
  renew(): Promise<void>;
  /** Stops listening for good. */
  close(): void;
}

export function makeGattTable(server: BluetoothRemoteGATTServer): GattTable {
  const found = new Map<string, Found>();
  const subscriptions: { address: CharacteristicAddress; onBytes: (bytes: Uint8Array) => void }[] = [];

  async function find({ service, characteristic }: CharacteristicAddress): Promise<Found> {
    const key = `${service} ${characteristic}`;
    const known = found.get(key);
    if (known !== undefined) return known;
    const place = await (await server.getPrimaryService(service)).getCharacteristic(characteristic);
    const discovered = { characteristic: place, tap: tapNotifications(place) };
    found.set(key, discovered);
    return discovered;
  }

  async function start(address: CharacteristicAddress, onBytes: (bytes: Uint8Array) => void): Promise<void> {
    const { characteristic, tap } = await find(address);
    await characteristic.startNotifications();
    tap.add(onBytes);
  }

  function close(): void {
    for (const { tap } of found.values()) tap.close();
    found.clear();
  }

  return {
    find,
    async listen(address, onBytes) {
      await start(address, onBytes);
      subscriptions.push({ address, onBytes });
    },
    async renew() {
      close();
      for (const { address, onBytes } of subscriptions) await start(address, onBytes);
    },
    close,
  };
}
