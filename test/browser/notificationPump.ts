/**
 * Chromium's emulation cannot push a notification, but a read fires the same event on the same object. So the page
 * remembers each characteristic at startNotifications, and the pump reads those; all else is the browser's own.
 */
import type { BrowserContext, Page } from "playwright-core";
import type { CharacteristicAddress } from "../../src/kernel/link.js";

interface Pumped {
  readonly BluetoothRemoteGATTCharacteristic?: { readonly prototype: BluetoothRemoteGATTCharacteristic };
  /** Pumps one characteristic until the sniffer has no more, or `most` times; how many values were delivered. */
  __pump(key: string, most: number): Promise<number>;
  /** Asks the test for the next value; it will be the answer to the next read. False if there is none. */
  __nextValue(key: string): Promise<boolean>;
}

export const keyOf = ({ service, characteristic }: CharacteristicAddress): string =>
  `${service} ${characteristic}`;

/** Prepares pages that are opened from now on, and this one. */
export async function installPump(page: Page, nextValue: (key: string) => boolean): Promise<void> {
  const context: BrowserContext = page.context();
  await context.exposeBinding("__nextValue", (_source, key: string) => nextValue(key));
  await context.addInitScript(rememberListening);
  await page.evaluate(rememberListening);
}

export function pumpPage(page: Page, address: CharacteristicAddress, most: number): Promise<number> {
  return page.evaluate(([key, times]) => (globalThis as unknown as Pumped).__pump(key, times), [
    keyOf(address),
    most,
  ] as const);
}

/** Runs in the page, so it may use nothing from outside itself. */
function rememberListening(): void {
  const here = globalThis as unknown as Pumped;
  const prototype = here.BluetoothRemoteGATTCharacteristic?.prototype;
  if ("__pump" in globalThis || prototype === undefined) return;
  const { startNotifications, readValue } = prototype;
  const listening = new Map<string, BluetoothRemoteGATTCharacteristic>();
  const reads = new Map<string, Promise<unknown>>();
  const keyFor = (characteristic: BluetoothRemoteGATTCharacteristic): string =>
    `${characteristic.service.uuid} ${characteristic.uuid}`;
  // The emulation answers all reads of one characteristic that are under way at once: keep them apart.
  const readAlone = <T>(key: string, read: () => Promise<T>): Promise<T> => {
    const result = (reads.get(key) ?? Promise.resolve()).then(read);
    reads.set(
      key,
      result.catch(() => undefined),
    );
    return result;
  };
  prototype.startNotifications = async function (this: BluetoothRemoteGATTCharacteristic) {
    const started = await startNotifications.call(this);
    listening.set(keyFor(this), this);
    return started;
  };
  prototype.readValue = function (this: BluetoothRemoteGATTCharacteristic) {
    return readAlone(keyFor(this), () => readValue.call(this));
  };
  here.__pump = async (key, most) => {
    for (let delivered = 0; ; delivered += 1) {
      const characteristic = listening.get(key);
      if (characteristic === undefined || delivered === most) return delivered;
      const more = await readAlone(key, async () => {
        if (!(await here.__nextValue(key))) return false;
        await readValue.call(characteristic);
        return true;
      }).catch(() => false); // the connection went: the value is lost on the air
      if (!more) return delivered;
    }
  };
}
