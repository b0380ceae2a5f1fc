// The sniffer on a real D-Bus daemon, with a stand-in for BlueZ at the other end: what a phone gets.
import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { assembleSweeps, beginSweeps, finishSweeps } from "../../src/profile/assembleSweeps.js";
import { fromHex, toHex } from "../../src/profile/bytes.js";
import { encodeControl } from "../../src/profile/control.js";
import { decodeStatus } from "../../src/profile/status.js";
import { decodeSweepFrame } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";
import { startBus, type BusDaemon } from "./busDaemon.js";
import { examplesOf, octets } from "./profileExample.js";
import { DONE, serveDevice, type ServedDevice } from "./servedDevice.js";

const LAYOUT = uuids.LAYOUT.characteristic;
const STATUS = uuids.STATUS.characteristic;
const CONTROL = uuids.CONTROL.characteristic;
const SWEEP = uuids.SWEEP.characteristic;

let daemon: BusDaemon;
let sniffer: ServedDevice;
beforeAll(async () => {
  daemon = await startBus();
}, 120_000);
afterAll(() => daemon.stop());
afterEach(() => sniffer.close());

describe("what BlueZ is shown", () => {
  it("has the profile's services and characteristics, with its properties and no serial number", async () => {
    sniffer = await serveDevice(daemon);
    const { path, objects } = sniffer.bluez.applications.get("hci0")!;
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
    sniffer = await serveDevice(daemon);
    const [advertisement] = sniffer.bluez.advertisements.get("hci0")!;
    expect(advertisement).toMatchObject({
      Type: "peripheral",
      ServiceUUIDs: [uuids.SNIFFER_SERVICE],
      LocalName: "Broth stall",
    });
  });

  it("is readable by the reference implementation of D-Bus, its own dbus-send", async () => {
    sniffer = await serveDevice(daemon);
    const { sender } = sniffer.bluez.applications.get("hci0")!;
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
    sniffer = await serveDevice(daemon);
    const layout = octets(examplesOf("layout")[0]!.hex);
    expect(await sniffer.hexOf(LAYOUT)).toBe(layout);
    const rest = await sniffer.bluez.read(LAYOUT, { offset: 22 });
    expect(rest).toEqual({ bytes: fromHex(layout.slice(44)) });
    expect(await sniffer.bluez.read(LAYOUT, { offset: layout.length / 2 })).toEqual({
      bytes: new Uint8Array(),
    });
    // 0x07 is Invalid Offset: Bluetooth Core, Vol 3 Part F, 3.4.1.1 (value from memory).
    expect(await sniffer.bluez.read(LAYOUT, { offset: layout.length / 2 + 1 })).toEqual({ attError: 0x07 });
  });

  it("reads STATUS while warming, measuring, and at fault", async () => {
    const [warming, measuring, fault] = examplesOf("status").map(({ hex }) => octets(hex));
    sniffer = await serveDevice(daemon, 12);
    sniffer.at(0, { kind: "heatersOn" });
    sniffer.nowMs = 90_000;
    expect(await sniffer.hexOf(STATUS)).toBe(warming);
    await sniffer.close();
    sniffer = await serveDevice(daemon, 312);
    sniffer.at(0, { kind: "heatersOn" });
    sniffer.nowMs = 600_000;
    expect(await sniffer.started(7)).toEqual({ bytes: new Uint8Array() });
    sniffer.nowMs = 600_250;
    expect(await sniffer.hexOf(STATUS)).toBe(measuring);
    await sniffer.close();
    sniffer = await serveDevice(daemon, 70_000);
    sniffer.at(0, { kind: "heatersOn" });
    sniffer.at(600_250, { kind: "heaterFault", on: true });
    expect(await sniffer.hexOf(STATUS)).toBe(fault);
  });

  it("reads temperature, humidity, pressure, charge and text", async () => {
    sniffer = await serveDevice(daemon);
    expect(await sniffer.hexOf(uuids.TEMPERATURE.characteristic)).toBe("0080"); // not known yet: section 9
    expect(await sniffer.hexOf(uuids.HUMIDITY.characteristic)).toBe("ffff");
    // Pressure and charge have no "not known": the read is refused, as not ready.
    expect(await sniffer.hexOf(uuids.PRESSURE.characteristic)).toBe("ATT error 128");
    expect(await sniffer.hexOf(uuids.BATTERY_LEVEL.characteristic)).toBe("ATT error 128");
    const known = (codec: string) => examplesOf(codec).find(({ value, error }) => value !== null && !error)!;
    const number = (codec: string) => Number(known(codec).value);
    const reading = {
      temperatureC: number("temperature"),
      humidityPct: number("humidity"),
      pressurePa: number("pressure"),
    };
    sniffer.at(1, { kind: "air", reading });
    sniffer.at(1, { kind: "battery", pct: number("batteryLevel") });
    expect(await sniffer.hexOf(uuids.TEMPERATURE.characteristic)).toBe(known("temperature").hex);
    expect(await sniffer.hexOf(uuids.HUMIDITY.characteristic)).toBe(known("humidity").hex);
    expect(await sniffer.hexOf(uuids.PRESSURE.characteristic)).toBe(known("pressure").hex);
    expect(await sniffer.hexOf(uuids.BATTERY_LEVEL.characteristic)).toBe(known("batteryLevel").hex);
    expect(await sniffer.hexOf(uuids.MODEL_NUMBER.characteristic)).toBe(known("text").hex);
  });

  it("sends the sweeps of the example run, frame for frame", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    await sniffer.bluez.subscribe(SWEEP);
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
      sniffer.at(startedAtMs + 1000, { kind: "sweep", startedAtMs, ohm });
    });
    await sniffer.settled();
    const announced = sniffer.bluez.announced(SWEEP).map(toHex);
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
    sniffer = await serveDevice(daemon);
    const bad = examplesOf("control").filter(({ attError }) => attError !== undefined);
    expect(bad).toHaveLength(3); // counted by hand in PROFILE.md section 6
    for (const { hex, attError } of bad) {
      expect(await sniffer.bluez.write(CONTROL, fromHex(hex))).toEqual({ attError });
    }
    expect(await sniffer.bluez.write(CONTROL, new Uint8Array())).toEqual({ attError: 0x82 });
  });

  it("takes each command when its time has come, and refuses it as not ready before", async () => {
    sniffer = await serveDevice(daemon);
    const [start, stop, purge] = examplesOf("control").map(({ hex }) => fromHex(hex));
    const state = async () => {
      const status = decodeStatus(fromHex(await sniffer.hexOf(STATUS)));
      return status.ok ? `${status.value.state} ${status.value.run}` : status.error.kind;
    };
    expect(await state()).toBe("cold 0");
    expect(await sniffer.bluez.write(CONTROL, start!)).toEqual({ attError: 0x80 });
    sniffer.at(0, { kind: "heatersOn" });
    expect(await sniffer.bluez.write(CONTROL, purge!)).toEqual({ attError: 0x80 });
    expect(await sniffer.bluez.write(CONTROL, stop!)).toEqual(DONE);
    expect(await state()).toBe("warming 0");
    sniffer.nowMs = 180_000; // the example's warm-up
    expect(await state()).toBe("ready 0");
    expect(await sniffer.bluez.write(CONTROL, start!)).toEqual(DONE);
    expect(await state()).toBe("measuring 7");
    expect(await sniffer.bluez.write(CONTROL, purge!)).toEqual(DONE);
    expect(await state()).toBe("purging 7");
    expect(await sniffer.bluez.write(CONTROL, start!)).toEqual({ attError: 0x80 });
    sniffer.nowMs = 270_000; // it purges for 90 s
    expect(await state()).toBe("ready 7");
  });

  it("refuses what is not for reading or writing even to a caller who does not look at the flags", async () => {
    sniffer = await serveDevice(daemon);
    const { sender } = sniffer.bluez.applications.get("hci0")!;
    const call = (characteristic: string, member: string, signature: string, body: unknown[]) =>
      sniffer.bus.call({
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
    expect(await sniffer.bluez.subscribe(LAYOUT)).toEqual({ attError: 0x06 });
  });

  it("does nothing yet when BlueZ only asks whether a long write may begin", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    const ask = { "prepare-authorize": ["b", true] };
    expect(await sniffer.bluez.write(CONTROL, encodeControl({ kind: "stop" }), ask)).toEqual({
      bytes: new Uint8Array(),
    });
    expect(sniffer.device.core().activity.kind).toBe("measuring");
  });
});

describe("notifications", () => {
  it("go out only while somebody is subscribed, and what nobody took is never sent again", async () => {
    sniffer = await serveDevice(daemon);
    await sniffer.warmAndStart(7);
    const sweep = (i: number) => {
      const startedAtMs = 600_000 + 1000 * i;
      sniffer.at(startedAtMs + 1000, { kind: "sweep", startedAtMs, ohm: [1000 + i, 2000, 3000] });
    };
    sweep(0);
    await sniffer.settled();
    expect(sniffer.bluez.announced(SWEEP)).toEqual([]);
    await sniffer.bluez.subscribe(SWEEP);
    sweep(1);
    await sniffer.bluez.subscribe(SWEEP, false);
    sweep(2);
    sweep(3);
    await sniffer.bluez.subscribe(SWEEP);
    sweep(4);
    await sniffer.settled();
    let assembly = beginSweeps(7, 3);
    const steps = sniffer.bluez.announced(SWEEP).map((frame) => {
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
    sniffer = await serveDevice(daemon);
    await sniffer.bluez.subscribe(STATUS);
    sniffer.at(0, { kind: "heatersOn" });
    for (let ms = 500; ms <= 180_000; ms += 500) sniffer.at(ms, { kind: "time" });
    await sniffer.started(1);
    await sniffer.settled();
    const statuses = sniffer.bluez.announced(STATUS).flatMap((bytes) => {
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
    sniffer = await serveDevice(daemon);
    for (const { characteristic } of [
      uuids.TEMPERATURE,
      uuids.HUMIDITY,
      uuids.PRESSURE,
      uuids.BATTERY_LEVEL,
    ]) {
      await sniffer.bluez.subscribe(characteristic);
    }
    sniffer.at(1, { kind: "air", reading: { temperatureC: 23.45, humidityPct: 56.78 } });
    sniffer.at(2, { kind: "battery", pct: 100 });
    sniffer.at(3, { kind: "battery", pct: 100 });
    await sniffer.settled();
    expect(sniffer.bluez.announced(uuids.TEMPERATURE.characteristic).map(toHex)).toEqual(["2909"]);
    expect(sniffer.bluez.announced(uuids.HUMIDITY.characteristic).map(toHex)).toEqual(["2e16"]);
    expect(sniffer.bluez.announced(uuids.PRESSURE.characteristic)).toEqual([]);
    expect(sniffer.bluez.announced(uuids.BATTERY_LEVEL.characteristic).map(toHex)).toEqual(["64"]); // no change, no news
  });
});
