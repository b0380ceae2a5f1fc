import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import { decodeBatteryLevel } from "../../src/profile/battery.js";
import { CONTROL_ATT_ERRORS, encodeControl } from "../../src/profile/control.js";
import { decodeText } from "../../src/profile/deviceInformation.js";
import { decodeHumidity, decodePressure, decodeTemperature } from "../../src/profile/environment.js";
import { decodeLayout } from "../../src/profile/layout.js";
import { decodeStatus } from "../../src/profile/status.js";
import { decodeSweepFrame } from "../../src/profile/sweepFrame.js";
import * as uuids from "../../src/profile/uuids.js";
import { NIGHT_MARKET, plateOf } from "../../src/virtual/dishes.js";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import {
  advance,
  createVirtualSniffer,
  PURGE_MS,
  readValue,
  serve,
  writeValue,
  type VirtualSniffer,
} from "../../src/virtual/virtualSniffer.js";
import { bytesOf, framesIn, started, statusIn, sweepsIn } from "./listening.js";

const WARM_MS = 600_000;
const plate = plateOf(NIGHT_MARKET[2]!, seededRandom(1));
const statusNow = (sniffer: VirtualSniffer) => {
  const bytes = readValue(sniffer, uuids.STATUS);
  const status = bytes.ok ? decodeStatus(bytes.value) : undefined;
  return status?.ok ? status.value : undefined;
};

describe("what it says of itself", () => {
  const sniffer = createVirtualSniffer({ seed: 1 });

  it("reads its layout: two sensors of four steps in two seconds", () => {
    const bytes = readValue(sniffer, uuids.LAYOUT);
    expect(bytes.ok && decodeLayout(bytes.value)).toEqual({ ok: true, value: DEMO_LAYOUT });
    expect(DEMO_LAYOUT.channels).toHaveLength(8);
    expect(DEMO_LAYOUT.sweepPeriodMs).toBe(2000);
  });

  it.each([
    ["temperature", uuids.TEMPERATURE, decodeTemperature],
    ["humidity", uuids.HUMIDITY, decodeHumidity],
    ["pressure", uuids.PRESSURE, decodePressure],
    ["charge", uuids.BATTERY_LEVEL, decodeBatteryLevel],
    ["maker", uuids.MANUFACTURER_NAME, decodeText],
    ["model", uuids.MODEL_NUMBER, decodeText],
    ["firmware", uuids.FIRMWARE_REVISION, decodeText],
    ["hardware", uuids.HARDWARE_REVISION, decodeText],
  ])("reads %s as the standard has it", (_what, address, decode) => {
    const bytes = readValue(sniffer, address);
    expect(bytes.ok && decode(bytes.value).ok).toBe(true);
  });

  it("refuses to be read where there is only writing or notifying, and knows no strangers", () => {
    expect(readValue(sniffer, uuids.CONTROL)).toEqual({ ok: false, error: "refused" });
    expect(readValue(sniffer, uuids.SWEEP)).toEqual({ ok: false, error: "refused" });
    const stranger = { ...uuids.STATUS, characteristic: uuids.canonicalUuid(0x2a25) };
    expect(readValue(sniffer, stranger)).toEqual({ ok: false, error: "absent" });
    // Bluetooth Core, Vol 3 Part F, 3.4.1.1: 0x0a attribute not found, 0x03 write not permitted (from memory).
    expect(writeValue(sniffer, stranger, Uint8Array.of(1)).attError).toBe(0x0a);
    expect(writeValue(sniffer, uuids.LAYOUT, Uint8Array.of(1)).attError).toBe(0x03);
    expect(writeValue(sniffer, uuids.SWEEP, Uint8Array.of(1)).attError).toBe(0x03);
  });
});

describe("warming", () => {
  it("counts down and becomes ready, telling each change", () => {
    const { sniffer, notifications } = advance(createVirtualSniffer({ seed: 1 }), 61_000);
    const told = statusIn(notifications);
    expect(told[0]).toMatchObject({ state: "warming", run: 0 });
    expect(told.at(-1)).toMatchObject({ state: "ready", warmUpLeftMs: 0, deviceTimeMs: 60_000 });
    const left = told.map((status) => status.warmUpLeftMs);
    expect(left).toEqual([...left].sort((a, b) => b - a));
    // PROFILE.md section 5: at least every 5 s while warming.
    told.slice(1).forEach((status, i) => {
      expect(status.deviceTimeMs - told[i]!.deviceTimeMs).toBeLessThanOrEqual(5000);
    });
    expect(statusNow(sniffer)).toMatchObject({ state: "ready", deviceTimeMs: 61_000 });
  });

  it("starts while still warming, and goes on telling how cold it is", () => {
    const { notifications } = advance(started(createVirtualSniffer({ seed: 1 }), 9), 30_000);
    const told = statusIn(notifications);
    expect(told.at(-1)).toMatchObject({ state: "measuring", run: 9, warmUpLeftMs: 30_000 });
    expect(sweepsIn(notifications, 9)).toHaveLength(15); // 30 s of 2 s sweeps, by hand
  });

  it("tells a run under way the moment it is warm", () => {
    const { notifications } = advance(started(createVirtualSniffer({ seed: 1 }), 9), 60_000);
    expect(statusIn(notifications).at(-1)).toMatchObject({
      state: "measuring",
      warmUpLeftMs: 0,
      deviceTimeMs: 60_000,
    });
  });

  it("moves much in its first seconds and little once warm", () => {
    const drift = (uptimeMs: number) => {
      const made = createVirtualSniffer({ seed: 1, uptimeMs });
      const sweeps = sweepsIn(advance(started(made, 1), 10_000).notifications, 1);
      return Math.abs(Math.log(sweeps.at(-1)!.ohm[0]! / sweeps[0]!.ohm[0]!));
    };
    expect(drift(0)).toBeGreaterThan(0.3);
    expect(drift(60_000)).toBeLessThan(0.05);
  });
});

describe("measuring", () => {
  it("sends nothing but frames that fit the default MTU and decode", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e6 }), fc.nat(31), (seed, dish) => {
        const food = plateOf(NIGHT_MARKET[dish]!, seededRandom(seed));
        const made = serve(createVirtualSniffer({ seed, uptimeMs: WARM_MS }), food);
        const { notifications } = advance(started(made, 1), 20_000);
        expect(notifications.every(({ bytes }) => bytes.length <= 20)).toBe(true);
        expect(framesIn(notifications).every((bytes) => decodeSweepFrame(bytes).ok)).toBe(true);
        expect(sweepsIn(notifications, 1)).toHaveLength(10);
        expect(statusIn(notifications).length).toBeGreaterThan(0);
        for (const [address, decode] of [
          [uuids.TEMPERATURE, decodeTemperature],
          [uuids.HUMIDITY, decodeHumidity],
          [uuids.PRESSURE, decodePressure],
        ] as const) {
          const sent = bytesOf(notifications, address);
          expect(sent).toHaveLength(10);
          expect(sent.every((bytes) => decode(bytes).ok)).toBe(true);
        }
      }),
      { numRuns: 25 },
    );
  });

  it("begins its sweeps on time and numbers them from 0", () => {
    const { notifications } = advance(started(createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS }), 1), 8000);
    const sweeps = sweepsIn(notifications, 1);
    expect(sweeps.map((sweep) => sweep.atMs)).toEqual([600_000, 602_000, 604_000, 606_000]);
    expect(sweeps.map((sweep) => sweep.counter)).toEqual([0, 1, 2, 3]);
  });

  it("goes on across the wrap of sequence number and device time", () => {
    const nearWrap = {
      ...createVirtualSniffer({ seed: 1, uptimeMs: 2 ** 32 - 3000 }),
      nextSequence: 65_533,
    };
    const { notifications, sniffer } = advance(started(nearWrap, 1), 8000);
    expect(sweepsIn(notifications, 1).map((sweep) => sweep.atMs - 2 ** 32)).toEqual([
      -3000, -1000, 1000, 3000,
    ]);
    expect(statusNow(sniffer)?.deviceTimeMs).toBe(5000);
    expect(sniffer.nextSequence).toBe(13); // 65 533 and 16 frames, modulo 65 536, by hand
  });

  it("takes each odour's answer from the plate: resistances fall, and rise again in clean air", () => {
    const inAir = advance(started(createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS }), 1), 20_000);
    const over = advance(serve(inAir.sniffer, plate), 60_000);
    const away = advance(serve(over.sniffer, null), 300_000);
    const all = [...inAir.notifications, ...over.notifications, ...away.notifications];
    const sweeps = sweepsIn(all, 1);
    const [clean, smelling, cleaned] = [sweeps[9]!, sweeps[39]!, sweeps.at(-1)!];
    clean.ohm.forEach((ohm, channel) => {
      expect(smelling.ohm[channel]).toBeLessThan(ohm * 0.9);
      expect(cleaned.ohm[channel]).toBeGreaterThan(ohm * 0.93);
    });
  });

  it("starts a new run on start, ends it on stop, and keeps silent then", () => {
    const first = advance(started(createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS }), 1), 3000);
    const second = advance(started(first.sniffer, 2), 5000);
    expect(sweepsIn(second.notifications, 2).map((sweep) => sweep.counter)).toEqual([0, 1]);
    const stopped = writeValue(second.sniffer, uuids.CONTROL, encodeControl({ kind: "stop" }));
    expect(stopped.attError).toBe(0);
    const after = advance(stopped.sniffer, 10_000);
    expect(framesIn(after.notifications)).toHaveLength(0);
    expect(statusIn(after.notifications)[0]).toMatchObject({ state: "ready", run: 2 });
  });

  it.each([
    ["nothing", [], "badLength"],
    ["an unknown command", [9], "unknownOpcode"],
    ["a start without a run", [1], "badLength"],
    ["run 0", [1, 0], "badRun"],
  ] as const)("answers %s with the profile's ATT error", (_what, octets, kind) => {
    const sniffer = createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS });
    const answer = writeValue(sniffer, uuids.CONTROL, Uint8Array.from(octets));
    expect(answer).toEqual({ sniffer, attError: CONTROL_ATT_ERRORS[kind] });
  });
});

describe("purging", () => {
  const smelly = advance(serve(createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS }), plate), 90_000).sniffer;
  const purge = writeValue(serve(smelly, null), uuids.CONTROL, encodeControl({ kind: "purge" }));

  it("drives off what the films hold faster than waiting does", () => {
    expect(purge.attError).toBe(0);
    const held = (sniffer: VirtualSniffer) => sniffer.air.ppm.reduce((sum, ppm) => sum + ppm, 0);
    const waited = advance(serve(smelly, null), PURGE_MS).sniffer;
    const purged = advance(purge.sniffer, PURGE_MS).sniffer;
    const rest = held(createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS }));
    expect(held(purged) - rest).toBeLessThan((held(waited) - rest) / 3);
  });

  it("starts nothing meanwhile, and ends by itself or on stop", () => {
    const midway = advance(purge.sniffer, PURGE_MS / 2).sniffer;
    expect(statusNow(midway)?.state).toBe("purging");
    const start = encodeControl({ kind: "start", run: 1 });
    expect(writeValue(midway, uuids.CONTROL, start).attError).toBe(CONTROL_ATT_ERRORS.notReady);
    const stopped = writeValue(midway, uuids.CONTROL, encodeControl({ kind: "stop" })).sniffer;
    expect(statusNow(stopped)?.state).toBe("ready");
    expect(statusNow(advance(midway, PURGE_MS / 2 + 250).sniffer)?.state).toBe("ready");
  });
});

describe("repeating", () => {
  const hexOf = (seed: number, cuts: readonly number[]) => {
    const made = createVirtualSniffer({ seed, uptimeMs: WARM_MS });
    let sniffer = serve(started(made, 1), plate);
    const seen: string[] = [];
    for (const ms of cuts) {
      const step = advance(sniffer, ms);
      sniffer = step.sniffer;
      seen.push(...step.notifications.map(({ address, bytes }) => address.characteristic + bytes.join()));
    }
    return seen;
  };

  it("gives the same bytes for the same seed, and others for another", () => {
    expect(hexOf(5, [10_000])).toEqual(hexOf(5, [10_000]));
    expect(hexOf(5, [10_000])).not.toEqual(hexOf(6, [10_000]));
  });

  it("gives the same bytes however the time is cut", () => {
    const whole = hexOf(5, [12_000]);
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 2400 }), { maxLength: 5 }), (pieces) => {
        const passed = pieces.reduce((sum, ms) => sum + ms, 0);
        expect(hexOf(5, [...pieces, 12_000 - passed])).toEqual(whole);
      }),
      { numRuns: 30 },
    );
  });

  it("leaves the state it was given untouched", () => {
    const before = started(createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS }), 1);
    const copy = structuredClone(before);
    advance(before, 5000);
    serve(before, plate);
    expect(before).toEqual(copy);
  });

  it("refuses a span that runs backwards or never ends, and a seed that is no whole number", () => {
    const sniffer = createVirtualSniffer({ seed: 1 });
    expect(() => advance(sniffer, -1)).toThrow(RangeError);
    expect(() => advance(sniffer, Infinity)).toThrow(RangeError);
    expect(() => createVirtualSniffer({ seed: 1.5 })).toThrow(RangeError);
    expect(() => createVirtualSniffer({ seed: 1, uptimeMs: -1 })).toThrow(RangeError);
    expect(() => createVirtualSniffer({ seed: 1, ageDays: -1 })).toThrow(RangeError);
  });
});

describe("other layouts", () => {
  it("measures an odd number of channels, with steps unheated and times unstated", () => {
    const layout = {
      ...DEMO_LAYOUT,
      sweepPeriodMs: 1000,
      channels: [
        { sensor: 0, heaterC: null, dwellMs: null },
        { sensor: 1, heaterC: 300, dwellMs: 400 },
        { sensor: 1, heaterC: 350, dwellMs: null },
      ],
    };
    const made = createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS, layout });
    const sweeps = sweepsIn(advance(started(made, 3), 5000).notifications, 3, 3);
    expect(sweeps).toHaveLength(5);
    expect(sweeps[0]!.ohm).toHaveLength(3);
  });

  it("keeps up with sweeps shorter than its own step", () => {
    const layout = {
      ...DEMO_LAYOUT,
      sweepPeriodMs: 100,
      channels: [{ sensor: 0, heaterC: 300, dwellMs: 100 }],
    };
    const made = createVirtualSniffer({ seed: 1, uptimeMs: WARM_MS, layout });
    const sweeps = sweepsIn(advance(started(made, 3), 1000).notifications, 3, 1);
    expect(sweeps.map((sweep) => sweep.atMs - WARM_MS)).toEqual([
      0, 100, 200, 300, 400, 500, 600, 700, 800, 900,
    ]);
  });
});
