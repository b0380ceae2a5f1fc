/** A sniffer that measures with the kernel's Industrial I/O. */
import type { CoreSetup } from "./core.js";
import { heatedSoFarMs } from "./core.js";
import { createCorePeripheral, type CorePeripheral } from "./corePeripheral.js";
import type { IioReader } from "./iioReader.js";
import type { Clock, Peripheral } from "./peripheral.js";
import { sweepUntilEnd, type LoopEnd } from "./sweepLoop.js";
import { layoutOf } from "./sweepPlan.js";

export interface IioOptions {
  readonly reader: IioReader;
  readonly clock: Clock;
  readonly snifferId: string;
  readonly model: string;
  readonly firmware: string;
  readonly heatedBeforeMs: number;
  /** The charge in per cent, null where it is not known; null instead of a function: there is no battery. */
  readonly readBattery: (() => Promise<number | null>) | null;
  /** Keeps how long the sensors were heated in their life, in milliseconds. */
  readonly keepHeated: (heatedMs: number) => Promise<void>;
}

/** How often the air is read, at most; between sweeps, so that it never disturbs one. */
const AIR_PERIOD_MS = 2000;
const BATTERY_PERIOD_MS = 30_000;
const KEEP_PERIOD_MS = 600_000;
/** How often the clock alone is looked at: for the count-down of the warm-up. */
const TICK_MS = 500;
/** How often a sensor that was lost is looked for. */
const RETRY_MS = 2000;

export function createIioPeripheral(options: IioOptions): Peripheral {
  const { clock } = options;
  const device = createCorePeripheral(setupOf(options), clock);
  const stopping = new AbortController();
  let running: Promise<unknown> = Promise.resolve();
  return {
    addresses: device.addresses,
    read: device.read,
    write: device.write,
    onNotification: device.onNotification,
    start: () => {
      running = Promise.all([
        measure(options, device, stopping.signal),
        tick(clock, device, stopping.signal),
      ]);
    },
    stop: async () => {
      stopping.abort();
      // Whatever ended the loops, the heaters are to go off.
      await running.catch(() => undefined);
      await options.reader.set(options.reader.table.off);
      device.feed({ kind: "heatersOff" });
      await options.keepHeated(device.core().heatedMs);
    },
  };
}

function setupOf(options: IioOptions): CoreSetup {
  const { reader, snifferId, model, firmware, heatedBeforeMs, readBattery } = options;
  const { air, purge } = reader.table;
  return {
    layout: layoutOf(reader.table, snifferId),
    senses: {
      temperature: air.temperature !== null,
      humidity: air.humidity !== null,
      pressure: air.pressure !== null,
      battery: readBattery !== null,
    },
    model,
    firmware,
    purgeMs: purge.forMs,
    heatedBeforeMs,
    firstSequence: 0,
  };
}

async function tick(clock: Clock, device: CorePeripheral, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    device.feed({ kind: "time" });
    await clock.wait(TICK_MS, signal);
  }
}

/** Measures; after a fault looks for the sensor again, and then begins cold. */
async function measure(options: IioOptions, device: CorePeripheral, signal: AbortSignal): Promise<void> {
  const { reader, clock } = options;
  while (!signal.aborted) {
    device.feed({ kind: "heatersOn" });
    const ended = await sweepUntilEnd({
      reader,
      clock,
      signal,
      between: betweenSweeps(options, device, signal),
      onSweep: (sweep) => device.feed({ kind: "sweep", ...sweep }),
    });
    if (ended === "stopped") return;
    device.feed(ended === "heater" ? { kind: "heaterFault", on: true } : { kind: "sensorLost" });
    await untilBack(options, signal);
    if (signal.aborted) return;
    device.feed(ended === "heater" ? { kind: "heaterFault", on: false } : { kind: "sensorBack" });
  }
}

/** All is back when the heaters can be set, every channel answers, and one at least shows a resistance. */
async function untilBack({ reader, clock }: IioOptions, signal: AbortSignal): Promise<void> {
  while (!signal.aborted) {
    await clock.wait(RETRY_MS, signal);
    if (!(await reader.set(reader.table.off)).ok) continue;
    const reads = [];
    for (const place of reader.table.channels.keys()) reads.push(await reader.readChannel(place));
    if (reads.every((read) => read.ok) && reads.some((read) => read.ok && read.value !== null)) return;
  }
}

/** What is due between two sweeps: a purge, the air, the battery, and keeping the hours. */
function betweenSweeps(options: IioOptions, device: CorePeripheral, signal: AbortSignal) {
  const { clock, reader, readBattery, keepHeated } = options;
  const due = (periodMs: number, first: number) => {
    let nextMs = first;
    return () => {
      if (clock.nowMs() < nextMs) return false;
      nextMs = clock.nowMs() + periodMs;
      return true;
    };
  };
  const nowMs = clock.nowMs();
  const airDue = due(AIR_PERIOD_MS, nowMs);
  const batteryDue = due(BATTERY_PERIOD_MS, nowMs);
  const keepDue = due(KEEP_PERIOD_MS, nowMs + KEEP_PERIOD_MS);
  return async (): Promise<LoopEnd | null> => {
    const purged = await purge(options, device, signal);
    if (purged !== null) return purged;
    if (airDue()) device.feed({ kind: "air", reading: await reader.readAir() });
    if (readBattery !== null && batteryDue()) device.feed({ kind: "battery", pct: await readBattery() });
    if (keepDue()) await keepHeated(heatedSoFarMs(device.core()));
    return null;
  };
}

/** Holds the purge's heater step for as long as the core says it is purging. */
async function purge(
  { reader, clock }: IioOptions,
  device: CorePeripheral,
  signal: AbortSignal,
): Promise<LoopEnd | null> {
  const isPurging = () => device.core().activity.kind === "purging";
  if (!isPurging()) return null;
  const set = await reader.set(reader.table.purge.heater);
  if (!set.ok) return "heater";
  while (isPurging() && !signal.aborted) await clock.wait(TICK_MS, signal);
  return null;
}
