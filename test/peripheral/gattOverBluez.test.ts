// The sniffer on a real D-Bus daemon, with a stand-in for BlueZ at the other end.
import { execFile } from "node:child_process";
import { setTimeout as delay } from "node:timers/promises";
import { promisify } from "node:util";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { assembleSweeps, beginSweeps, finishSweeps } from "../../src/profile/assembleSweeps.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import { encodeControl } from "../../src/profile/control.js";
import type { SnifferLayout } from "../../src/profile/layout.js";
import { decodeStatus } from "../../src/profile/status.js";
import { decodeSweepFrame } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";
import { connectBus, type Bus } from "../../src/peripheral/bus.js";
import { createCorePeripheral, type CorePeripheral } from "../../src/peripheral/corePeripheral.js";
import { serveGatt, type GattServer } from "../../src/peripheral/gattServer.js";
import { openRegistration, type Registration } from "../../src/peripheral/registration.js";
import type { Clock } from "../../src/peripheral/peripheral.js";
import type { Problem } from "../../src/peripheral/problem.js";
import { startBus, type BusDaemon } from "./busDaemon.js";
import { examplesOf, octets } from "./profileExample.js";
import { startStandInBluez, type StandInBluez } from "./standInBluez.js";

const LAYOUT = uuids.LAYOUT.characteristic;
const STATUS = uuids.STATUS.characteristic;
const CONTROL = uuids.CONTROL.characteristic;
const SWEEP = uuids.SWEEP.characteristic;
const MS_PER_HOUR = 3_600_000;
const PHONE = "/org/bluez/hci0/dev_1";

let daemon: BusDaemon;
let bluez: StandInBluez;
let bus: Bus;
let device: CorePeripheral;
let server: GattServer;
let registration: Registration;
let nowMs = 0;
let served: string[] = [];
let problems: Problem[] = [];
let stopping: AbortController;
let kept: Promise<void>;

const realClock: Clock = {
  nowMs: () => nowMs,
  wait: (ms, signal) => delay(ms, undefined, { signal }).catch(() => undefined),
};

beforeAll(async () => {
  daemon = await startBus();
}, 120_000);
afterAll(() => daemon.stop());

beforeEach(() => {
  nowMs = 0;
  served = [];
  problems = [];
  stopping = new AbortController();
  kept = Promise.resolve();
});
afterEach(async () => {
  stopping.abort();
  await kept;
  await bus.close();
  await bluez.stop();
});

/** A sniffer whose every value is that of the profile's examples, as far as it is up to it. */
async function open(heatedHours = 12): Promise<void> {
  const connected = await connectBus(daemon.address);
  if (!connected.ok) throw new Error(connected.error.message);
  bus = connected.value;
  device = createCorePeripheral(
    {
      layout: examplesOf("layout")[0]!.value as SnifferLayout,
      senses: { temperature: true, humidity: true, pressure: true, battery: true },
      model: String(examplesOf("text")[0]!.value),
      firmware: "1.2",
      purgeMs: 20_000,
      heatedBeforeMs: heatedHours * MS_PER_HOUR,
      firstSequence: examplesOf("sweep")[0]!.firstSequence,
    },
    realClock,
  );
  server = serveGatt({
    bus,
    peripheral: { ...device, start: () => undefined, stop: () => Promise.resolve() },
    clock: realClock,
    name: "Broth stall",
    onReleased: () => registration.released(),
  });
  const opened = await openRegistration({
    bus,
    clock: realClock,
    wanted: null,
    onServed: (adapter) => served.push(adapter),
    onProblem: (problem) => problems.push(problem),
    onPresence: (event) =>
      event.kind === "adapterGone" ? server.forgetSubscribers() : server.presence(event),
  });
  if (!opened.ok) throw new Error(opened.error.kind);
  registration = opened.value;
}

/** Registered with hci0, and kept so. */
async function openServed(heatedHours?: number): Promise<void> {
  bluez = await startStandInBluez(daemon.address);
  bluez.addAdapter("hci0");
  await open(heatedHours);
  expect(await registration.attempt()).toEqual({ ok: true, value: "/org/bluez/hci0" });
  kept = registration.keep(stopping.signal);
}

const at = (ms: number, event: Parameters<CorePeripheral["feed"]>[0]): void => {
  nowMs = ms;
  device.feed(event);
};
const hexOf = async (characteristic: string): Promise<string> => {
  const answer = await bluez.read(characteristic);
  return "bytes" in answer ? toHex(answer.bytes) : `ATT error ${answer.attError}`;
};
const started = (run: number) => bluez.write(CONTROL, encodeControl({ kind: "start", run }));
/** Everything the application sent so far has come: D-Bus keeps the order of one sender. */
const settled = () => bluez.read(STATUS);

describe("what BlueZ is shown", () => {
  it("has the profile's services and characteristics, with its properties and no serial number", async () => {
    await openServed();
    const { path, objects } = bluez.applications.get("hci0")!;
    expect(path).toBe("/nidor/sniffer");
    const shown = Object.values(objects).flatMap((interfaces) => {
      const characteristic = interfaces["org.bluez.GattCharacteristic1"];
      if (characteristic === undefined) return [];
      const service = objects[String(characteristic["Service"])]?.["org.bluez.GattService1"];
      return [[service?.["UUID"], characteristic["UUID"], characteristic["Flags"]]];
    });
    const wanted = (address: { service: string; characteristic: string }, ...flags: string[]) => [
      address.service,
      address.characteristic,
      flags,
    ];
    // PROFILE.md section 3, the table of characteristics.
    expect(shown).toEqual([
      wanted(uuids.LAYOUT, "read"),
      wanted(uuids.STATUS, "read", "notify"),
      wanted(uuids.CONTROL, "write"),
      wanted(uuids.SWEEP, "notify"),
      wanted(uuids.TEMPERATURE, "read", "notify"),
      wanted(uuids.HUMIDITY, "read", "notify"),
      wanted(uuids.PRESSURE, "read", "notify"),
      wanted(uuids.BATTERY_LEVEL, "read", "notify"),
      wanted(uuids.MODEL_NUMBER, "read"),
      wanted(uuids.FIRMWARE_REVISION, "read"),
    ]);
    expect(shown.flat()).not.toContain(uuids.canonicalUuid(0x2a25));
  });

  it("advertises as connectable with the sniffer service and its name", async () => {
    await openServed();
    const [advertisement] = bluez.advertisements.get("hci0")!;
    expect(advertisement).toMatchObject({
      Type: "peripheral",
      ServiceUUIDs: [uuids.SNIFFER_SERVICE],
      LocalName: "Broth stall",
    });
  });

  it("is readable by the reference implementation of D-Bus, its own dbus-send", async () => {
    await openServed();
    const { sender } = bluez.applications.get("hci0")!;
    const send = async (path: string, method: string, ...contents: string[]): Promise<string> => {
      const call = [`--bus=${daemon.address}`, "--print-reply", `--dest=${sender}`, path, method];
      return (await promisify(execFile)("dbus-send", [...call, ...contents])).stdout;
    };
    const listed = await send("/nidor/sniffer", "org.freedesktop.DBus.ObjectManager.GetManagedObjects");
    expect(listed).toContain(`string "${uuids.SNIFFER_SERVICE}"`);
    expect(listed).toContain('object path "/nidor/sniffer/service0/characteristic3"');
    const model = await send(
      "/nidor/sniffer/service3/characteristic0",
      "org.bluez.GattCharacteristic1.ReadValue",
      "dict:string:string:link,LE",
    );
    expect(model).toMatch(/array of bytes \[\s+42 c3 bc 72 6f\s+\]/); // PROFILE.md section 9, "Büro"
  });
});

describe("values, byte for byte those of the profile's examples", () => {
  it("reads LAYOUT whole, and on from anywhere as a long read does", async () => {
    await openServed();
    const layout = octets(examplesOf("layout")[0]!.hex);
    expect(await hexOf(LAYOUT)).toBe(layout);
    const rest = await bluez.read(LAYOUT, { offset: 22 });
    expect(rest).toEqual({ bytes: fromHex(layout.slice(44)) });
    expect(await bluez.read(LAYOUT, { offset: layout.length / 2 })).toEqual({ bytes: new Uint8Array() });
    // 0x07 is Invalid Offset: Bluetooth Core, Vol 3 Part F, 3.4.1.1 (value from memory).
    expect(await bluez.read(LAYOUT, { offset: layout.length / 2 + 1 })).toEqual({ attError: 0x07 });
  });

  it("reads STATUS while warming, measuring, and at fault", async () => {
    const [warming, measuring, fault] = examplesOf("status").map(({ hex }) => octets(hex));
    await openServed(12);
    at(0, { kind: "heatersOn" });
    nowMs = 90_000;
    expect(await hexOf(STATUS)).toBe(warming);
    await reopened(312);
    at(0, { kind: "heatersOn" });
    nowMs = 600_000;
    expect(await started(7)).toEqual({ bytes: new Uint8Array() });
    nowMs = 600_250;
    expect(await hexOf(STATUS)).toBe(measuring);
    await reopened(70_000);
    at(0, { kind: "heatersOn" });
    at(600_250, { kind: "heaterFault", on: true });
    expect(await hexOf(STATUS)).toBe(fault);
  });

  it("reads temperature, humidity, pressure, charge and text", async () => {
    await openServed();
    expect(await hexOf(uuids.TEMPERATURE.characteristic)).toBe("0080"); // not known yet: section 9
    expect(await hexOf(uuids.HUMIDITY.characteristic)).toBe("ffff");
    // Pressure and charge have no "not known": the read is refused, as not ready.
    expect(await hexOf(uuids.PRESSURE.characteristic)).toBe("ATT error 128");
    expect(await hexOf(uuids.BATTERY_LEVEL.characteristic)).toBe("ATT error 128");
    const known = (codec: string) => examplesOf(codec).find(({ value, error }) => value !== null && !error)!;
    const number = (codec: string) => Number(known(codec).value);
    const reading = {
      temperatureC: number("temperature"),
      humidityPct: number("humidity"),
      pressurePa: number("pressure"),
    };
    at(1, { kind: "air", reading });
    at(1, { kind: "battery", pct: number("batteryLevel") });
    expect(await hexOf(uuids.TEMPERATURE.characteristic)).toBe(known("temperature").hex);
    expect(await hexOf(uuids.HUMIDITY.characteristic)).toBe(known("humidity").hex);
    expect(await hexOf(uuids.PRESSURE.characteristic)).toBe(known("pressure").hex);
    expect(await hexOf(uuids.BATTERY_LEVEL.characteristic)).toBe(known("batteryLevel").hex);
    expect(await hexOf(uuids.MODEL_NUMBER.characteristic)).toBe(known("text").hex);
  });

  it("sends the sweeps of the example run, frame for frame", async () => {
    await openServed();
    await warmAndStart(7);
    await bluez.subscribe(SWEEP);
    const sent = examplesOf("assembly")[0]!.frames.map(octets);
    const second = decodeSweepFrame(fromHex(sent[2]!)); // the run's second sweep, whose last frame was lost
    if (!second.ok) throw new Error(second.error.kind);
    const single = examplesOf("sweepFrame").filter(({ error }) => error === undefined);
    const rows = [
      [51234.5, 48000, 1250000],
      [...second.value.ohm, 1240000],
      [50900, 47800, 1230000],
      [50850, null, 1220000],
    ];
    rows.forEach((ohm, i) => {
      const startedAtMs = 600_000 + 1000 * i;
      at(startedAtMs + 1000, { kind: "sweep", startedAtMs, ohm });
    });
    await settled();
    const announced = bluez.announced(SWEEP).map(toHex);
    expect(announced).toHaveLength(8); // four sweeps of three channels: counted by hand
    expect(announced).toEqual(
      expect.arrayContaining([
        ...sent,
        ...single.map(({ hex }) => octets(hex)),
        ...examplesOf("sweep")[0]!.frames.map(octets),
      ]),
    );
  });
});

describe("commands", () => {
  it("answers the profile's bad commands with their ATT errors", async () => {
    await openServed();
    const bad = examplesOf("control").filter(({ attError }) => attError !== undefined);
    expect(bad).toHaveLength(3); // counted by hand in PROFILE.md section 6
    for (const { hex, attError } of bad) {
      expect(await bluez.write(CONTROL, fromHex(hex))).toEqual({ attError });
    }
    expect(await bluez.write(CONTROL, new Uint8Array())).toEqual({ attError: 0x82 });
  });

  it("takes each command when its time has come, and refuses it as not ready before", async () => {
    await openServed();
    const [start, stop, purge] = examplesOf("control").map(({ hex }) => fromHex(hex));
    const state = async () => {
      const status = decodeStatus(fromHex(await hexOf(STATUS)));
      return status.ok ? `${status.value.state} ${status.value.run}` : status.error.kind;
    };
    const done = { bytes: new Uint8Array() };
    expect(await state()).toBe("cold 0");
    expect(await bluez.write(CONTROL, start!)).toEqual({ attError: 0x80 });
    at(0, { kind: "heatersOn" });
    expect(await bluez.write(CONTROL, purge!)).toEqual({ attError: 0x80 });
    expect(await bluez.write(CONTROL, stop!)).toEqual(done);
    expect(await state()).toBe("warming 0");
    nowMs = 180_000; // the example's warm-up
    expect(await state()).toBe("ready 0");
    expect(await bluez.write(CONTROL, start!)).toEqual(done);
    expect(await state()).toBe("measuring 7");
    expect(await bluez.write(CONTROL, purge!)).toEqual(done);
    expect(await state()).toBe("purging 7");
    expect(await bluez.write(CONTROL, start!)).toEqual({ attError: 0x80 });
    nowMs = 200_000;
    expect(await state()).toBe("ready 7");
  });

  it("refuses what is not for reading or writing even to a caller who does not look at the flags", async () => {
    await openServed();
    const { sender } = bluez.applications.get("hci0")!;
    const call = (characteristic: string, member: string, signature: string, body: unknown[]) =>
      bus.call({
        destination: sender,
        path: `/nidor/sniffer/service0/${characteristic}`,
        interface: "org.bluez.GattCharacteristic1",
        member,
        signature,
        body,
      });
    const refused = { ok: false, error: { name: "org.bluez.Error.NotPermitted" } };
    expect(await call("characteristic3", "ReadValue", "a{sv}", [[]])).toMatchObject(refused);
    expect(await call("characteristic0", "WriteValue", "aya{sv}", [[1], []])).toMatchObject(refused);
    const unknown = await call("characteristic0", "toString", "", []);
    expect(unknown).toMatchObject({ ok: false, error: { name: "org.freedesktop.DBus.Error.UnknownMethod" } });
    expect(await bluez.subscribe(LAYOUT)).toEqual({ attError: 0x06 });
  });

  it("does nothing yet when BlueZ only asks whether a long write may begin", async () => {
    await openServed();
    await warmAndStart(7);
    const ask = { "prepare-authorize": ["b", true] };
    expect(await bluez.write(CONTROL, encodeControl({ kind: "stop" }), ask)).toEqual({
      bytes: new Uint8Array(),
    });
    expect(device.core().activity.kind).toBe("measuring");
  });
});

describe("notifications", () => {
  it("go out only while somebody is subscribed, and what nobody took is never sent again", async () => {
    await openServed();
    await warmAndStart(7);
    const sweep = (i: number) => {
      const startedAtMs = 600_000 + 1000 * i;
      at(startedAtMs + 1000, { kind: "sweep", startedAtMs, ohm: [1000 + i, 2000, 3000] });
    };
    sweep(0);
    await settled();
    expect(bluez.announced(SWEEP)).toEqual([]);
    await bluez.subscribe(SWEEP);
    sweep(1);
    await bluez.subscribe(SWEEP, false);
    sweep(2);
    sweep(3);
    await bluez.subscribe(SWEEP);
    sweep(4);
    await settled();
    let assembly = beginSweeps(7, 3);
    const steps = bluez.announced(SWEEP).map((frame) => {
      const step = assembleSweeps(assembly, frame);
      assembly = step.state;
      return step;
    });
    steps.push(finishSweeps(assembly));
    expect(steps.flatMap(({ sweeps }) => sweeps).map(({ counter, ohm }) => [counter, ohm[0]])).toEqual([
      [1, 1001],
      [4, 1004],
    ]);
  });

  it("tell of every change of state, and count the warm-up down", async () => {
    await openServed();
    await bluez.subscribe(STATUS);
    at(0, { kind: "heatersOn" });
    for (let ms = 500; ms <= 180_000; ms += 500) at(ms, { kind: "time" });
    await started(1);
    await settled();
    const statuses = bluez.announced(STATUS).flatMap((bytes) => {
      const status = decodeStatus(bytes);
      return status.ok ? [status.value] : [];
    });
    expect(statuses.at(-2)).toMatchObject({ state: "ready", run: 0, warmUpLeftMs: 0 });
    expect(statuses.at(-1)).toMatchObject({ state: "measuring", run: 1 });
    const warming = statuses
      .filter(({ state }) => state === "warming")
      .map(({ deviceTimeMs }) => deviceTimeMs);
    const gaps = warming.slice(1).map((ms, i) => ms - warming[i]!);
    expect(Math.max(...gaps, 180_000 - warming.at(-1)!)).toBeLessThanOrEqual(5000); // PROFILE.md section 5
  });

  it("carry the air and the charge", async () => {
    await openServed();
    for (const { characteristic } of [
      uuids.TEMPERATURE,
      uuids.HUMIDITY,
      uuids.PRESSURE,
      uuids.BATTERY_LEVEL,
    ]) {
      await bluez.subscribe(characteristic);
    }
    at(1, { kind: "air", reading: { temperatureC: 23.45, humidityPct: 56.78 } });
    at(2, { kind: "battery", pct: 100 });
    at(3, { kind: "battery", pct: 100 });
    await settled();
    expect(bluez.announced(uuids.TEMPERATURE.characteristic).map(toHex)).toEqual(["2909"]);
    expect(bluez.announced(uuids.HUMIDITY.characteristic).map(toHex)).toEqual(["2e16"]);
    expect(bluez.announced(uuids.PRESSURE.characteristic)).toEqual([]);
    expect(bluez.announced(uuids.BATTERY_LEVEL.characteristic).map(toHex)).toEqual(["64"]); // no change, no news
  });
});

describe("a run that nobody follows any more", () => {
  const measuring = () => device.core().activity.kind === "measuring";

  it("goes on for 60 s after the phone left, and then ends", async () => {
    await openServed();
    await warmAndStart(7);
    await bluez.subscribe(SWEEP);
    await bluez.subscribe(SWEEP, false);
    bluez.disconnect(PHONE);
    await settledSignal();
    nowMs += 59_999;
    server.tick();
    expect(measuring()).toBe(true);
    nowMs += 1;
    server.tick();
    expect(measuring()).toBe(false); // 60 s: PROFILE.md section 2
  });

  it("goes on while the phone is there, and when it came back in time", async () => {
    await openServed();
    await warmAndStart(7);
    nowMs += 3_600_000;
    server.tick();
    expect(measuring()).toBe(true);
    bluez.disconnect(PHONE);
    await settledSignal();
    nowMs += 40_000;
    await hexOf(STATUS);
    nowMs += 40_000;
    server.tick();
    expect(measuring()).toBe(true);
  });

  it("does not end a purge", async () => {
    await openServed();
    await warmAndStart(7);
    await bluez.write(CONTROL, encodeControl({ kind: "purge" }));
    bluez.disconnect(PHONE);
    await settledSignal();
    nowMs += 10_000;
    server.tick();
    expect(device.core().activity.kind).toBe("purging");
  });
});

describe("adapters that go and come back", () => {
  const both = (adapter: string) => () =>
    bluez.applications.has(adapter) && bluez.advertisements.get(adapter)?.length === 1;

  it("registers again after the adapter was unplugged, and the run went on meanwhile", async () => {
    await openServed();
    await warmAndStart(7);
    await bluez.subscribe(SWEEP);
    bluez.removeAdapter("hci0");
    await bluez.until(() => problems.length > 0, "the loss to be told");
    expect(problems[0]).toEqual({ kind: "noAdapter", wanted: null, present: [] });
    at(601_000, { kind: "sweep", startedAtMs: 600_000, ohm: [1, 2, 3] });
    bluez.addAdapter("hci0");
    await bluez.until(both("hci0"), "the sniffer to be registered again");
    await bluez.until(() => served.length === 1, "the return to be told");
    expect(served).toEqual(["hci0"]);
    // The new adapter knows of no subscription, so nothing is sent until the phone subscribes again.
    at(602_000, { kind: "sweep", startedAtMs: 601_000, ohm: [1, 2, 3] });
    await bluez.subscribe(SWEEP);
    at(603_000, { kind: "sweep", startedAtMs: 602_000, ohm: [1, 2, 3] });
    await settled();
    const counters = bluez.announced(SWEEP).map((bytes) => {
      const frame = decodeSweepFrame(bytes);
      return frame.ok ? frame.value.counter : -1;
    });
    expect(counters).toEqual([2, 2]);
  });

  it("moves to another adapter that comes instead", async () => {
    await openServed();
    bluez.removeAdapter("hci0");
    bluez.addAdapter("hci1");
    await bluez.until(both("hci1"), "the sniffer to be registered with the other");
  });

  it("advertises again after the adapter was switched off and on", async () => {
    await openServed();
    bluez.power("hci0", false);
    await bluez.until(() => problems.length > 0, "the loss to be told");
    expect(problems[0]).toEqual({ kind: "adapterOff", adapter: "hci0" });
    bluez.power("hci0", true);
    await bluez.until(() => served.length === 1, "the return to be told");
    expect(both("hci0")()).toBe(true);
  });

  it("advertises again when BlueZ released the advertisement", async () => {
    await openServed();
    await bluez.releaseAdvertisement("hci0");
    await bluez.until(both("hci0"), "the advertisement to be back");
  });

  it("registers again with a BlueZ that was restarted", async () => {
    await openServed();
    await bluez.stop();
    await bluez.until(() => problems.length > 0, "the loss to be told");
    expect(problems[0]).toMatchObject({ kind: "noBluez" });
    bluez = await startStandInBluez(daemon.address);
    bluez.addAdapter("hci0");
    await bluez.until(both("hci0"), "the sniffer to be registered with the new one");
  });

  it("takes both back when it ends", async () => {
    await openServed();
    stopping.abort();
    await kept;
    await registration.withdraw();
    expect(bluez.applications.size).toBe(0);
    expect(bluez.advertisements.get("hci0")).toEqual([]);
  });
});

describe("why it cannot be served", () => {
  const refusal = async (): Promise<Problem | null> => {
    await open();
    const attempt = await registration.attempt();
    return attempt.ok ? null : attempt.error;
  };

  it("no adapter", async () => {
    bluez = await startStandInBluez(daemon.address);
    expect(await refusal()).toEqual({ kind: "noAdapter", wanted: null, present: [] });
  });

  it("an adapter that is off", async () => {
    bluez = await startStandInBluez(daemon.address);
    bluez.addAdapter("hci0", { powered: false });
    expect(await refusal()).toEqual({ kind: "adapterOff", adapter: "hci0" });
  });

  it("an adapter that cannot be a peripheral", async () => {
    bluez = await startStandInBluez(daemon.address);
    bluez.addAdapter("hci0", { peripheral: false });
    expect(await refusal()).toEqual({ kind: "noPeripheralRole", adapter: "hci0" });
  });

  it("no advertisement left on it", async () => {
    bluez = await startStandInBluez(daemon.address);
    bluez.addAdapter("hci0", { slots: 0 });
    expect(await refusal()).toMatchObject({ kind: "advertisingBusy", adapter: "hci0" });
  });

  it("another program's application at BlueZ is no hindrance, the adapter that can is found", async () => {
    bluez = await startStandInBluez(daemon.address);
    bluez.addAdapter("hci0", { peripheral: false });
    bluez.addAdapter("hci1", { powered: false });
    bluez.addAdapter("hci2");
    expect(await refusal()).toBeNull();
    expect([...bluez.applications.keys()]).toEqual(["hci2"]);
  });
});

/** Warm at 180 s, started at 600 s with the profile's run. */
async function warmAndStart(run: number): Promise<void> {
  at(0, { kind: "heatersOn" });
  nowMs = 600_000;
  expect(await started(run)).toEqual({ bytes: new Uint8Array() });
}

/** Another sniffer on the same daemon, after the first has gone. */
async function reopened(heatedHours: number): Promise<void> {
  stopping.abort();
  await kept;
  await bus.close();
  await bluez.stop();
  nowMs = 0;
  stopping = new AbortController();
  await openServed(heatedHours);
}

/** A signal the stand-in sent has reached the sniffer once a call it sent later was answered. */
const settledSignal = () => bluez.subscribe(STATUS);
