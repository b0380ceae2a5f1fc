import { describe, expect, it } from "vitest";
import {
  BURN_IN_HOURS,
  DEW_MARGIN_C,
  fitness,
  MOST_FRAMES_LOST,
  type Fitness,
} from "../../src/flows/fitness.js";
import { LOW_BATTERY_PCT } from "../../src/flows/lowBattery.js";
import type { ConnectedSniffer } from "../../src/flows/snifferState.js";
import { STALE_CLEAN_AIR_MS } from "../../src/sniff/staleCleanAir.js";
import { SNIFFER } from "../browser/gallery/fixtures/sniffers.js";

const STATUS = SNIFFER.status!;
const fitOf = (item: keyof Fitness, sniffer: Partial<ConnectedSniffer>, ageMs: number | null = 0) =>
  fitness({ ...SNIFFER, ...sniffer }, ageMs)[item].fit;
const sweeps = (count: number, ohmAt: (i: number) => number) =>
  Array.from({ length: count }, (_, i) => ({ atMs: i * 2000, ohm: [ohmAt(i)] }));

describe("each item of fitness stands on both sides of its limit and on it", () => {
  it.each([
    [BURN_IN_HOURS - 1, "attention"],
    [BURN_IN_HOURS, "well"],
  ] as const)("burnt in for %s h: %s", (burnInHours, fit) => {
    expect(fitOf("burnIn", { status: { ...STATUS, burnInHours } })).toBe(fit);
  });

  it.each([
    [LOW_BATTERY_PCT - 1, "attention"],
    [LOW_BATTERY_PCT, "well"],
    [null, "unknown"],
  ] as const)("battery at %s: %s", (batteryPct, fit) => {
    expect(fitOf("battery", { batteryPct })).toBe(fit);
  });

  it.each([
    [STALE_CLEAN_AIR_MS, "well"],
    [STALE_CLEAN_AIR_MS + 1, "renewed"],
    [null, "unknown"],
  ] as const)("clean air of %s ms ago: %s", (ageMs, fit) => {
    expect(fitOf("cleanAir", {}, ageMs)).toBe(fit);
  });

  it.each([
    ["ready", 0, "well"],
    ["warming", 1, "attention"],
    ["cold", 0, "attention"],
  ] as const)("%s with %s ms left: %s", (state, warmUpLeftMs, fit) => {
    expect(fitOf("warmUp", { status: { ...STATUS, state, warmUpLeftMs } })).toBe(fit);
  });

  it("heater: well, faulty by its flag, faulty by its state, not told", () => {
    expect(fitOf("heater", {})).toBe("well");
    expect(fitOf("heater", { status: { ...STATUS, heaterFault: true } })).toBe("attention");
    expect(fitOf("heater", { status: { ...STATUS, state: "fault" } })).toBe("attention");
    expect(fitOf("heater", { status: null })).toBe("unknown");
  });

  it("humidity: the margin to the dew point decides", () => {
    // 20 °C at 60 % has its dew point at 12.0 °C, at 90 % at 18.3 °C (psychrometric tables, value from memory).
    const at = (humidityPct: number) =>
      fitness({ ...SNIFFER, air: { temperatureC: 20, humidityPct } }, 0).humidity;
    expect(at(60).marginC).toBeCloseTo(8, 1);
    expect(at(60).fit).toBe("well");
    expect(at(90).marginC).toBeLessThan(DEW_MARGIN_C);
    expect(at(90).fit).toBe("attention");
    expect(at(0).fit).toBe("well");
    expect(fitOf("humidity", { air: {} })).toBe("unknown");
  });

  it("humidity: a case that was in colder air before is nearer to the dew point than the air is", () => {
    // 25 °C at 60 % has its dew point at 16.70 °C (HU-E2, Alduchov and Eskridge's form turned round).
    const at = (earlierC: number) =>
      fitness(
        {
          ...SNIFFER,
          air: { temperatureC: 25, humidityPct: 60 },
          recentAir: [{ temperatureC: earlierC, humidityPct: 70 }],
        },
        0,
      ).humidity;
    expect(at(25)).toEqual({ fit: "well", marginC: expect.closeTo(8.3, 1) as number });
    expect(at(18)).toEqual({ fit: "attention", marginC: expect.closeTo(1.3, 1) as number });
  });

  it("air sensor: moving, standing still where it must move, at its end, and too few to tell", () => {
    const of = (...recentAir: ConnectedSniffer["recentAir"]) => fitOf("airSensor", { recentAir });
    const readings = (temperaturesC: readonly number[], humidityPct: number) =>
      temperaturesC.map((temperatureC) => ({ temperatureC, humidityPct }));
    expect(of(...readings([20, 21, 22, 23], 100))).toBe("unknown");
    expect(of(...readings([22, 22, 22, 22, 22], 100))).toBe("attention");
    expect(of(...readings([20, 20.5, 21, 21.5, 22], 45))).toBe("attention");
    expect(of(...readings([22, 22, 22, 22, 22], 45))).toBe("well");
    expect(of(...readings([20, 20.5, 21, 21.5], 45), { temperatureC: 22, humidityPct: 44 })).toBe("well");
  });

  it("lost notifications: one frame a sweep here, so the share is counted by hand", () => {
    const lost = (framesLost: number, count: number) =>
      fitOf("link", { health: { ...SNIFFER.health, framesLost, sweeps: count } });
    expect(MOST_FRAMES_LOST).toBe(0.05);
    expect([lost(5, 95), lost(6, 94), lost(0, 0)]).toEqual(["well", "attention", "unknown"]);
  });

  it("steadiness: too few sweeps are not known, a drift is told, a rest is well", () => {
    expect(fitOf("steadiness", { recent: sweeps(3, () => 1e5) })).toBe("unknown");
    expect(fitOf("steadiness", { recent: sweeps(12, (i) => 1e5 * 1.01 ** i) })).toBe("attention");
    expect(fitOf("steadiness", { recent: sweeps(12, (i) => 1e5 + i) })).toBe("well");
  });

  it("channels: stuck at one value five times running, or beyond what can be measured", () => {
    const channels = (recent: ConnectedSniffer["recent"]) => fitness({ ...SNIFFER, recent }, 0).channels;
    expect(channels(sweeps(4, () => 1e5)).fit).toBe("unknown");
    expect(channels(sweeps(5, () => 1e5))).toEqual({ fit: "attention", bad: [0] });
    expect(channels(sweeps(6, (i) => 1e5 + i)).fit).toBe("well");
    expect(channels(sweeps(6, (i) => 2e9 + i)).bad).toEqual([0]);
  });
});
