import { describe, expect, it } from "vitest";
import type { CheckEvent } from "../../src/flows/checkState.js";
import { failureOf, snifferFrom, withFirstReadings } from "../../src/flows/openSniffer.js";
import { beginRun, endRun, takeBytes } from "../../src/flows/snifferBytes.js";
import type { ConnectedSniffer } from "../../src/flows/snifferState.js";
import { err, ok } from "../../src/kernel/result.js";
import { encodeBatteryLevel } from "../../src/profile/battery.js";
import { encodeText } from "../../src/profile/deviceInformation.js";
import { encodeHumidity, encodeTemperature } from "../../src/profile/environment.js";
import { encodeLayout, type SnifferLayout } from "../../src/profile/layout.js";
import { encodeStatus, type SnifferStatus } from "../../src/profile/status.js";
import { encodeSweep } from "../../src/profile/sweepFrame.js";
import { BATTERY_LEVEL, HUMIDITY, STATUS, SWEEP, TEMPERATURE } from "../../src/profile/uuids.js";

const layout: SnifferLayout = {
  profileVersion: { major: 1, minor: 0 },
  snifferId: "00112233445566aa",
  channels: [0, 1, 2].map((sensor) => ({ sensor, heaterC: 250, dwellMs: 100 })),
  sweepPeriodMs: 1000,
  warmUpMs: 60_000,
};
const missing = err({ kind: "absent", address: BATTERY_LEVEL } as const);
const noNames = { maker: missing, model: missing, firmware: missing };

function connected(): ConnectedSniffer {
  const opened = snifferFrom("bench sniffer", false, encodeLayout(layout), noNames);
  if (!opened.ok) throw new Error("the layout above is sound");
  return beginRun(opened.value);
}

function takeAll(sniffer: ConnectedSniffer, frames: readonly Uint8Array[]) {
  let now = sniffer;
  const events: CheckEvent[] = [];
  for (const bytes of frames) {
    const step = takeBytes(now, SWEEP, bytes);
    now = step.sniffer;
    events.push(...step.events);
  }
  return { sniffer: now, events };
}

const sweepOf = (counter: number) => ({
  run: 1,
  counter,
  atMs: counter * 1000,
  ohm: [1000 + counter, 2000, 3000],
});
const framesOf = (counters: number[]) =>
  counters.flatMap((counter) => encodeSweep(sweepOf(counter), counter * 2));
const status: SnifferStatus = {
  state: "warming",
  heaterFault: false,
  run: 0,
  warmUpLeftMs: 12_000,
  deviceTimeMs: 48_000,
  burnInHours: 50,
};

describe("bytes of a connected sniffer", () => {
  it("become sweeps with the device's own time", () => {
    const { sniffer, events } = takeAll(connected(), framesOf([0, 1, 2]));
    expect(events).toEqual(
      [0, 1, 2].map((counter) => ({
        kind: "sweep",
        sweep: { atMs: counter * 1000, ohm: sweepOf(counter).ohm },
      })),
    );
    expect(sniffer.health).toMatchObject({ sweeps: 3, framesLost: 0, corruptFrames: 0 });
  });

  it("name a sweep that did not come whole, and invent nothing for it", () => {
    const frames = framesOf([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    frames.splice(5, 1); // the second frame of sweep 2
    const taken = takeAll(connected(), frames);
    const ended = endRun(taken.sniffer);
    const events = [...taken.events, ...ended.events];
    const lost = events
      .filter((event) => event.kind === "sweepsLost")
      .reduce((sum, event) => sum + event.count, 0);
    expect(lost).toBe(1);
    const came = events.filter((event) => event.kind === "sweep").map((event) => event.sweep.ohm[0]);
    expect(came).toEqual([1000, 1001, 1003, 1004, 1005, 1006, 1007, 1008]);
    expect(ended.sniffer.health.framesLost).toBe(1);
  });

  it("are passed over while no run was begun", () => {
    const opened = snifferFrom("x", false, encodeLayout(layout), noNames);
    expect(opened.ok && takeAll(opened.value, framesOf([0])).events).toEqual([]);
  });

  it("tell the warm-up, and a heater fault stops the check", () => {
    expect(takeBytes(connected(), STATUS, encodeStatus(status)).events).toEqual([
      { kind: "warmUp", leftMs: 12_000 },
    ]);
    const fault = encodeStatus({ ...status, heaterFault: true });
    expect(takeBytes(connected(), STATUS, fault).events).toEqual([
      { kind: "interrupted", cause: "snifferFault" },
    ]);
  });

  it("keep the last known air when a value is not known, and count what the standard prohibits", () => {
    const warm = takeBytes(connected(), TEMPERATURE, encodeTemperature(21.5)).sniffer;
    const unknown = takeBytes(warm, TEMPERATURE, encodeTemperature(null));
    expect(unknown.sniffer.air).toEqual({ temperatureC: 21.5 });
    expect(unknown.events).toEqual([]);
    // 0x2711 = 100.01 %, prohibited by the GATT Specification Supplement (check value BT-E7).
    const bad = takeBytes(warm, HUMIDITY, Uint8Array.of(0x11, 0x27));
    expect(bad.sniffer.air.humidityPct).toBeUndefined();
    expect(bad.sniffer.health.badReadings).toBe(1);
    expect(takeBytes(warm, HUMIDITY, encodeHumidity(41)).events).toEqual([
      { kind: "air", reading: { humidityPct: 41 } },
    ]);
  });

  it("tell the battery, and 101 % is no reading (Battery Service: 101 to 255 reserved)", () => {
    expect(takeBytes(connected(), BATTERY_LEVEL, encodeBatteryLevel(64)).sniffer.batteryPct).toBe(64);
    expect(takeBytes(connected(), BATTERY_LEVEL, Uint8Array.of(101)).sniffer.batteryPct).toBeNull();
  });
});

describe("a fresh connection", () => {
  it("goes on from the run the sniffer last had, so that old sweeps are not taken for new", () => {
    const opened = snifferFrom("x", false, encodeLayout(layout), noNames);
    if (!opened.ok) throw new Error("the layout above is sound");
    const read = withFirstReadings(opened.value, [
      { address: STATUS, value: ok(encodeStatus({ ...status, run: 7 })) },
      { address: BATTERY_LEVEL, value: missing },
    ]);
    expect(read).toMatchObject({ lastRun: 7, batteryPct: null });
    expect(beginRun(read).lastRun).toBe(8);
  });

  it("takes the names it is given and no empty ones", () => {
    const names = { maker: ok(encodeText("Bench & Co")), model: ok(encodeText("  ")), firmware: missing };
    expect(snifferFrom("x", true, encodeLayout(layout), names)).toMatchObject({
      value: { maker: "Bench & Co", model: null, firmware: null, virtual: true },
    });
  });

  it("refuses a profile newer than this app, with both versions", () => {
    const bytes = encodeLayout({ ...layout, profileVersion: { major: 2, minor: 0 } });
    expect(snifferFrom("x", false, bytes, noNames)).toMatchObject({
      ok: false,
      error: {
        kind: "badLayout",
        error: { kind: "profileVersion", found: { major: 2 }, known: { major: 1 } },
      },
    });
  });

  it.each([
    [{ kind: "lost" } as const, "unreachable"],
    [{ kind: "absent", address: STATUS } as const, "notASniffer"],
    [{ kind: "refused", detail: "no" } as const, "unexpected"],
  ])("%o is told as %s", (error, kind) => {
    expect(failureOf(error).kind).toBe(kind);
  });
});
