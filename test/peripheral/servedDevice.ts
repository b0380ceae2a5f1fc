// A sniffer on a test's bus, with the values of the profile's examples, and the stand-in for BlueZ to meet it.
import { setTimeout as delay } from "node:timers/promises";
import { connectBus, type Bus } from "../../src/peripheral/bus.js";
import { createCorePeripheral, type CorePeripheral } from "../../src/peripheral/corePeripheral.js";
import type { CoreEvent } from "../../src/peripheral/coreStep.js";
import { serveGatt, type GattServer } from "../../src/peripheral/gattServer.js";
import type { Clock } from "../../src/peripheral/peripheral.js";
import type { Problem } from "../../src/peripheral/problem.js";
import { openRegistration, type Registration } from "../../src/peripheral/registration.js";
import { toHex } from "../../src/profile/bytes.js";
import { encodeControl } from "../../src/profile/control.js";
import type { SnifferLayout } from "../../src/profile/layout.js";
import { CONTROL, STATUS } from "../../src/profile/uuids.js";
import type { BusDaemon } from "./busDaemon.js";
import { examplesOf } from "./profileExample.js";
import { startStandInBluez, type AttAnswer, type StandInBluez } from "./standInBluez.js";

const MS_PER_HOUR = 3_600_000;
/** What a write that was taken answers. */
export const DONE: AttAnswer = { bytes: new Uint8Array() };

export interface ServedDevice {
  /** A test may start another in its place. */
  bluez: StandInBluez;
  readonly bus: Bus;
  readonly device: CorePeripheral;
  readonly server: GattServer;
  readonly registration: Registration;
  /** Adapters it was told to be served on, after the first. */
  readonly served: readonly string[];
  readonly problems: readonly Problem[];
  /** Device time; a test sets it. */
  nowMs: number;
  at(ms: number, event: CoreEvent): void;
  /** Keeps it registered from now on. */
  keep(): void;
  stopKeeping(): Promise<void>;
  close(): Promise<void>;
  hexOf(characteristic: string): Promise<string>;
  started(run: number): Promise<AttAnswer>;
  /** Warm long since; started at 600 s. */
  warmAndStart(run: number): Promise<void>;
  /** What went either way before has arrived: D-Bus keeps the order of one sender. */
  settled(): Promise<unknown>;
}

/** A sniffer that has met BlueZ and is not registered yet. */
export async function meetBluez(
  daemon: BusDaemon,
  prepare: (bluez: StandInBluez) => void,
  heatedHours = 12,
): Promise<ServedDevice> {
  const bluez = await startStandInBluez(daemon.address);
  prepare(bluez);
  const connected = await connectBus(daemon.address);
  if (!connected.ok) throw new Error(connected.error.message);
  const bus = connected.value;
  const time = { nowMs: 0 };
  const clock: Clock = {
    nowMs: () => time.nowMs,
    wait: (ms, signal) => delay(ms, undefined, { signal }).catch(() => undefined),
  };
  const device = createCorePeripheral(
    {
      layout: examplesOf("layout")[0]!.value as SnifferLayout,
      senses: { temperature: true, humidity: true, pressure: true, battery: true },
      model: String(examplesOf("text")[0]!.value),
      firmware: "1.2",
      purgeMs: 90_000,
      heatedBeforeMs: heatedHours * MS_PER_HOUR,
      firstSequence: examplesOf("sweep")[0]!.firstSequence,
    },
    clock,
  );
  const served: string[] = [];
  const problems: Problem[] = [];
  let released: () => void = () => undefined;
  const server = serveGatt({
    bus,
    peripheral: { ...device, start: () => undefined, stop: () => Promise.resolve() },
    clock,
    name: "Broth stall",
    onReleased: () => released(),
  });
  const opened = await openRegistration({
    bus,
    clock,
    wanted: null,
    onServed: (adapter) => served.push(adapter),
    onProblem: (problem) => problems.push(problem),
    onPresence: (event) =>
      event.kind === "adapterGone" ? server.forgetSubscribers() : server.presence(event),
  });
  if (!opened.ok) throw new Error(opened.error.kind);
  const registration = opened.value;
  released = () => registration.released();

  const stopping = new AbortController();
  let kept: Promise<void> = Promise.resolve();
  const it: ServedDevice = {
    bluez,
    bus,
    device,
    server,
    registration,
    served,
    problems,
    get nowMs() {
      return time.nowMs;
    },
    set nowMs(ms) {
      time.nowMs = ms;
    },
    at: (ms, event) => {
      time.nowMs = ms;
      device.feed(event);
    },
    keep: () => {
      kept = registration.keep(stopping.signal);
    },
    stopKeeping: () => {
      stopping.abort();
      return kept;
    },
    close: async () => {
      stopping.abort();
      await kept;
      await bus.close();
      await it.bluez.stop();
    },
    hexOf: async (characteristic) => {
      const answer = await it.bluez.read(characteristic);
      return "bytes" in answer ? toHex(answer.bytes) : `ATT error ${answer.attError}`;
    },
    started: (run) => it.bluez.write(CONTROL.characteristic, encodeControl({ kind: "start", run })),
    warmAndStart: async (run) => {
      it.at(0, { kind: "heatersOn" });
      time.nowMs = 600_000;
      const answer = await it.started(run);
      if ("attError" in answer) throw new Error(`start was refused: ${answer.attError}`);
    },
    settled: () => it.bluez.subscribe(STATUS.characteristic),
  };
  return it;
}

/** A sniffer registered with hci0, and kept so. */
export async function serveDevice(daemon: BusDaemon, heatedHours?: number): Promise<ServedDevice> {
  const it = await meetBluez(daemon, (bluez) => bluez.addAdapter("hci0"), heatedHours);
  const first = await it.registration.attempt();
  if (!first.ok) throw new Error(first.error.kind);
  it.keep();
  return it;
}
