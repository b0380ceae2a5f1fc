/** The virtual sniffer behind an emulated peripheral: the page meets it over real Web Bluetooth calls. */
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import { seededRandom } from "../../src/kernel/random.js";
import * as uuids from "../../src/profile/uuids.js";
import { NIGHT_MARKET, plateOf } from "../../src/virtual/dishes.js";
import {
  advance,
  createVirtualSniffer,
  readValue,
  serve,
  writeValue,
} from "../../src/virtual/virtualSniffer.js";
import type { EmulatedProperties, EmulatedSniffer } from "./emulatedPeripheral.js";

/** Device time runs faster than the clock on the wall, or the tests would take as long as a dinner. */
const STEP_MS = 400;
const STEP_EVERY_MS = 20;
/** As old as the demo nose expects its sniffer to be: a week after the last evening it was taught on. */
const AGE_DAYS = 91;

export interface TableSniffer extends EmulatedSniffer {
  /** Puts a plate of a dish of the night market under it; null takes the plate away. */
  serveDish(id: string | null): void;
  /** Lets device time pass until the answer is called. */
  run(): () => void;
}

const readable = { read: true };
const told = { read: true, notify: true };

const services: Record<string, Record<string, EmulatedProperties>> = {
  [uuids.SNIFFER_SERVICE]: {
    [uuids.LAYOUT.characteristic]: readable,
    [uuids.STATUS.characteristic]: told,
    [uuids.CONTROL.characteristic]: { write: true },
    [uuids.SWEEP.characteristic]: { read: true, notify: true },
  },
  [uuids.ENVIRONMENTAL_SENSING_SERVICE]: {
    [uuids.TEMPERATURE.characteristic]: told,
    [uuids.HUMIDITY.characteristic]: told,
    [uuids.PRESSURE.characteristic]: told,
  },
  [uuids.BATTERY_SERVICE]: { [uuids.BATTERY_LEVEL.characteristic]: told },
  [uuids.DEVICE_INFORMATION_SERVICE]: {
    [uuids.MANUFACTURER_NAME.characteristic]: readable,
    [uuids.MODEL_NUMBER.characteristic]: readable,
    [uuids.FIRMWARE_REVISION.characteristic]: readable,
  },
};

/**
 * A sniffer on the table.
 *
 * @param garble - changes the bytes of one characteristic on their way out, as a firmware with another profile would
 */
export function tableSniffer(
  seed: number,
  garble: (address: CharacteristicAddress, bytes: Uint8Array) => Uint8Array = (_address, bytes) => bytes,
): TableSniffer {
  const random = seededRandom(seed);
  const waiting = new Map<string, Uint8Array[]>();
  let sniffer = createVirtualSniffer({ seed, ageDays: AGE_DAYS });

  function letTimePass(): void {
    const advanced = advance(sniffer, STEP_MS);
    sniffer = advanced.sniffer;
    for (const { address, bytes } of advanced.notifications) {
      const queue = waiting.get(address.characteristic) ?? [];
      waiting.set(address.characteristic, [...queue, garble(address, bytes)]);
    }
  }

  return {
    name: "Table sniffer",
    services,
    read: (address) => {
      const value = readValue(sniffer, address);
      return value.ok ? garble(address, value.value) : new Uint8Array();
    },
    write: (address, bytes) => {
      const written = writeValue(sniffer, address, bytes);
      sniffer = written.sniffer;
      return written.attError;
    },
    nextNotification: (address) => {
      const [first, ...rest] = waiting.get(address.characteristic) ?? [];
      waiting.set(address.characteristic, rest);
      return first ?? null;
    },
    serveDish: (id) => {
      const dish = NIGHT_MARKET.find((known) => known.id === id);
      sniffer = serve(sniffer, dish === undefined ? null : plateOf(dish, random));
    },
    run: () => {
      const timer = setInterval(letTimePass, STEP_EVERY_MS);
      return () => clearInterval(timer);
    },
  };
}
