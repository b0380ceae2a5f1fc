import { seededRandom } from "../kernel/random.js";
import {
  BATTERY_LEVEL,
  CONTROL,
  FIRMWARE_REVISION,
  HARDWARE_REVISION,
  HUMIDITY,
  LAYOUT,
  MANUFACTURER_NAME,
  MODEL_NUMBER,
  PRESSURE,
  STATUS,
  SWEEP,
  TEMPERATURE,
} from "../profile/uuids.js";
import { plateOf, type Dish } from "../virtual/dishes.js";
import type { VirtualSnifferOptions } from "../virtual/snifferState.js";
import {
  advance,
  createVirtualSniffer,
  readValue,
  serve,
  writeValue,
  type VirtualSniffer,
} from "../virtual/virtualSniffer.js";
import type { Clock, Peripheral, PeripheralNotification } from "./peripheral.js";

/** The sniffer that exists only as numbers, on a real radio: for trying a phone without a sensor. */
export interface VirtualPeripheral extends Peripheral {
  /** Puts a fresh plate of a dish under it; null takes it away. */
  serve(dish: Dish | null): void;
}

const TICK_MS = 50;

/** @param made - its seed is whole; the same seed, the same sniffer and the same plates */
export function createVirtualPeripheral(
  made: Pick<VirtualSnifferOptions, "seed" | "faults" | "ageDays">,
  clock: Clock,
): VirtualPeripheral {
  const random = seededRandom(made.seed ^ 0x9e3779b9);
  const stopping = new AbortController();
  let sniffer: VirtualSniffer = createVirtualSniffer({
    seed: made.seed,
    faults: made.faults ?? {},
    ageDays: made.ageDays ?? 0,
  });
  let reachedMs = clock.nowMs();
  let running: Promise<void> = Promise.resolve();
  let listener: (notification: PeripheralNotification) => void = () => undefined;

  const catchUp = (): void => {
    const nowMs = clock.nowMs();
    const advanced = advance(sniffer, nowMs - reachedMs);
    reachedMs = nowMs;
    sniffer = advanced.sniffer;
    advanced.notifications.forEach((notification) => listener(notification));
  };
  const tick = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      catchUp();
      await clock.wait(TICK_MS, stopping.signal);
    }
  };
  return {
    addresses: [
      LAYOUT,
      STATUS,
      CONTROL,
      SWEEP,
      TEMPERATURE,
      HUMIDITY,
      PRESSURE,
      BATTERY_LEVEL,
      MANUFACTURER_NAME,
      MODEL_NUMBER,
      FIRMWARE_REVISION,
      HARDWARE_REVISION,
    ],
    read: (address) => {
      catchUp();
      return readValue(sniffer, address);
    },
    write: (address, bytes) => {
      catchUp();
      const written = writeValue(sniffer, address, bytes);
      sniffer = written.sniffer;
      return written.attError;
    },
    onNotification: (next) => {
      listener = next;
    },
    start: () => {
      running = tick();
    },
    stop: async () => {
      stopping.abort();
      await running;
    },
    serve: (dish) => {
      catchUp();
      sniffer = serve(sniffer, dish === null ? null : plateOf(dish, random));
    },
  };
}
