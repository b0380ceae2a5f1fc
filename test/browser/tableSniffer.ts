/** The virtual sniffer behind an emulated peripheral: the page meets it over real Web Bluetooth calls. */
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import { seededRandom } from "../../src/kernel/random.js";
import * as uuids from "../../src/profile/uuids.js";
import { NIGHT_MARKET, plateOf } from "../../src/virtual/dishes.js";
import { decodeSweepFrame, type Sweep } from "../../src/profile/sweepFrame.js";
import type { VirtualSnifferOptions } from "../../src/virtual/snifferState.js";
import {
  advance,
  createVirtualSniffer,
  readValue,
  serve,
  writeValue,
} from "../../src/virtual/virtualSniffer.js";
import type { EmulatedProperties, EmulatedSniffer } from "./emulatedPeripheral.js";

/** Device time runs faster than the clock on the wall, or the tests would take as long as a dinner. */
const SPEED = 20;
const STEP_EVERY_MS = 20;
/** As old as the demo nose expects its sniffer to be: a week after the last evening it was taught on. */
const AGE_DAYS = 91;

export interface TableSniffer extends EmulatedSniffer {
  /** Puts a plate of a dish of the night market under it; null takes the plate away. */
  serveDish(id: string | null): void;
  /** Lets device time pass until the answer is called. */
  run(): () => void;
  /** Lets so much device time pass, and nobody hears what is said meanwhile. */
  passUnheard(ms: number): void;
  /** Loses power for a moment: cold again, no run, clock and sequence from 0. */
  reboot(): void;
  /** Every sweep it made, as its frames say before anything happened to them, of all runs. */
  made(): readonly Sweep[];
}

export type Garble = (address: CharacteristicAddress, bytes: Uint8Array) => Uint8Array;

export interface TableOptions {
  /** Services that this sniffer lacks. */
  readonly without?: readonly string[];
  /** Another order for the frames of one moment. */
  readonly reorder?: (frames: Uint8Array[]) => Uint8Array[];
  readonly firstSequence?: number;
  /** How many times faster than the clock on the wall its time runs; 20 if left out. */
  readonly speed?: number;
  /** Another unit off the same line, under an id of its own; the taught one if left out. */
  readonly unit?: VirtualSnifferOptions;
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
  garble: Garble = (_address, bytes) => bytes,
  { without = [], reorder = (frames) => frames, firstSequence = 0, speed = SPEED, unit }: TableOptions = {},
): TableSniffer {
  const random = seededRandom(seed);
  const waiting = new Map<string, Uint8Array[]>();
  const sent: Uint8Array[] = [];
  const fresh = () => ({
    ...createVirtualSniffer({ ageDays: AGE_DAYS, ...unit, seed }),
    nextSequence: firstSequence,
  });
  let sniffer = fresh();

  function letTimePass(ms: number): void {
    const advanced = advance(sniffer, ms);
    sniffer = advanced.sniffer;
    const batches = new Map<CharacteristicAddress, Uint8Array[]>();
    for (const { address, bytes } of advanced.notifications) {
      if (address.characteristic === uuids.SWEEP.characteristic) sent.push(bytes);
      batches.set(address, [...(batches.get(address) ?? []), garble(address, bytes)]);
    }
    for (const [address, batch] of batches) {
      const queue = waiting.get(address.characteristic) ?? [];
      const isSweeps = address.characteristic === uuids.SWEEP.characteristic;
      waiting.set(address.characteristic, [...queue, ...(isSweeps ? reorder(batch) : batch)]);
    }
  }

  return {
    name: "Table sniffer",
    services: Object.fromEntries(Object.entries(services).filter(([service]) => !without.includes(service))),
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
      const timer = setInterval(() => letTimePass(speed * STEP_EVERY_MS), STEP_EVERY_MS);
      return () => clearInterval(timer);
    },
    passUnheard: (ms) => {
      letTimePass(ms);
      waiting.clear();
    },
    reboot: () => {
      sniffer = fresh();
      waiting.clear();
    },
    made: () => sweepsIn(sent),
  };
}

/** Frames in the order made to sweeps, with no help from the app's own assembly. */
function sweepsIn(frames: readonly Uint8Array[]): Sweep[] {
  const sweeps: Sweep[] = [];
  let ohm: number[] = [];
  for (const bytes of frames) {
    const frame = decodeSweepFrame(bytes);
    if (!frame.ok) throw new Error(`the sniffer made a bad frame: ${frame.error.kind}`);
    const { run, counter, deviceTimeMs: atMs, last, firstChannel } = frame.value;
    ohm = [...(firstChannel === 0 ? [] : ohm), ...frame.value.ohm.map((value) => value ?? Number.NaN)];
    if (last) sweeps.push({ run, counter, atMs, ohm });
  }
  return sweeps;
}
