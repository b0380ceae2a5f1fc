import { existsSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AirReading } from "../../src/kernel/air.js";
import {
  airFault,
  dewMarginC,
  isHumidityStuck,
  TELLING_CHANGE_C,
  TELLING_READINGS,
} from "../../src/sniff/airSensor.js";
import { readSniffFile } from "../../src/sniff/sniffFile.js";

const air = (temperatureC: number, humidityPct: number): AirReading => ({ temperatureC, humidityPct });

describe("condensation", () => {
  it("is judged by the dew point of the headspace against the case, not by relative humidity alone", () => {
    // Dew points of the AE96 form turned round (HU-E4: 60 °C at 20 % has 29.02 °C; HU-E2: 25 °C at 60 % has 16.70 °C).
    expect(airFault(air(22, 45), air(60, 20))).toBe("wetSensor");
    expect(airFault(air(30, 45), air(60, 20))).toBeNull();
    expect(airFault(air(22, 45), air(25, 60))).toBeNull();
    expect(airFault(air(16.6, 45), air(25, 60))).toBe("wetSensor");
    expect(dewMarginC(air(60, 20), 22)).toBeCloseTo(22 - 29.0232, 3);
  });

  it("must be expected over a served dish: 57, 60 and 63 °C saturated wet any case of room temperature", () => {
    // check-values section 2, from IAPWS: "dew point above any sensor case temperature".
    for (const servedC of [57, 60, 63]) expect(airFault(air(22, 45), air(servedC, 99))).toBe("wetSensor");
  });

  it("a cooler case never gets a larger margin", () => {
    const degrees = fc.double({ min: -20, max: 60, noNaN: true });
    const percent = fc.double({ min: 1, max: 100, noNaN: true });
    fc.assert(
      fc.property(degrees, percent, degrees, degrees, (t, rh, one, other) => {
        const [cooler, warmer] = [Math.min(one, other), Math.max(one, other)];
        expect(dewMarginC(air(t, rh), cooler)!).toBeLessThanOrEqual(dewMarginC(air(t, rh), warmer)!);
      }),
    );
  });

  it("is not judged where the air is not known", () => {
    expect(airFault()).toBeNull();
    expect(airFault(air(22, 45), { temperatureC: 60 })).toBeNull();
    expect(dewMarginC({ humidityPct: 50 })).toBeNull();
    expect(dewMarginC(air(20, 0))).toBe(Number.POSITIVE_INFINITY);
  });
});

describe("a stuck air sensor", () => {
  it("stands at the end of its range in clean air too", () => {
    expect(airFault(air(23, 100), air(23, 100))).toBe("airStuck");
    expect(airFault({}, air(23, 100))).toBe("airStuck");
    // Steam wets a sensor that was dry in clean air: that is no fault of it.
    expect(airFault(air(23, 45), air(40, 100))).toBe("wetSensor");
  });

  it("says the same to the last digit although the temperature moved by what must show", () => {
    expect(airFault(air(22, 45.2), air(22 + TELLING_CHANGE_C, 45.2))).toBe("airStuck");
    expect(airFault(air(22, 45.2), air(22.5, 45.2))).toBeNull();
    expect(airFault(air(22, 45.2), air(26, 45.3))).toBeNull();
  });

  it("that counts in hundredths is seen over 0.3 K, one in tenths over 0.5 K, one in whole per cents over 2 K", () => {
    // With the same water in it, 45 % at 22 °C falls by about 2.5 per cents a kelvin (saturation: 19.4 and 20.6 g/m3).
    const steadily = (riseC: number, humidityPct: number, count = 40) =>
      isHumidityStuck(
        Array.from({ length: count }, (_, i) =>
          air(22 + Math.min(riseC, (riseC * i) / (count / 2)), humidityPct),
        ),
      );
    expect([0, 0.2, 0.3].map((riseC) => steadily(riseC, 45.23))).toEqual([false, false, true]);
    expect([0.2, 0.5].map((riseC) => steadily(riseC, 45.2))).toEqual([false, true]);
    expect([0.5, 1.9, 2].map((riseC) => steadily(riseC, 45))).toEqual([false, false, true]);
    // Two readings, or a few, may be alike by chance.
    expect(steadily(0.5, 45.23, TELLING_READINGS - 1)).toBe(false);
    expect(steadily(0.5, 45.23, TELLING_READINGS)).toBe(true);
  });

  it("is not blamed while the humidity of a new temperature is on its way", () => {
    const still = Array.from({ length: 37 }, () => air(22, 45.23));
    const warmer = Array.from({ length: 3 }, () => air(23, 45.23));
    expect(isHumidityStuck([...still, ...warmer])).toBe(false);
    expect(isHumidityStuck([...still, ...warmer, air(23, 45.23)])).toBe(true);
  });

  it("is not seen where nothing moved, or in no reading at all", () => {
    expect(isHumidityStuck([])).toBe(false);
    expect(isHumidityStuck(Array.from({ length: 40 }, () => air(22, 45)))).toBe(false);
    // A converter of 8 bits counts in steps of 100 / 255 = 0.39 per cents, and tells 45.10 or 45.49 for ever.
    expect(isHumidityStuck(Array.from({ length: 40 }, () => air(22, 45.1)))).toBe(false);
    expect(isHumidityStuck(Array.from({ length: 40 }, (_, i) => air(22 + 0.01 * (i % 3), 45.49)))).toBe(
      false,
    );
    expect(isHumidityStuck([{ temperatureC: 20 }, { temperatureC: 30 }])).toBe(false);
  });
});

const openData = new URL("../../../shared/open-data/", import.meta.url);
describe.skipIf(!existsSync(openData))("public gas-sensor data", () => {
  // Counted from the files: in smellnet50 (Feng et al. 2025) ten foods read exactly 33.59 °C, 100 % and 68 860 Pa.
  // beef36h (Wijaya et al. 2018) is humid, up to 99.9 %, and moves; hops30 is dry.
  it.each([
    ["smellnet50", 59, 0],
    ["hops30", 0, 0],
    ["beef36h", 0, 167],
  ])("%s: %i sniffs with a stuck air sensor, %i with a wet one", (name, stuck, wet) => {
    const { sniffs } = readSniffFile(readFileSync(new URL(`${name}.sniffs.jsonl`, openData), "utf8"));
    const faults = sniffs.map((sniff) => airFault(sniff.air?.cleanAir, sniff.air?.headspace));
    expect(faults.filter((fault) => fault === "airStuck")).toHaveLength(stuck);
    expect(faults.filter((fault) => fault === "wetSensor")).toHaveLength(wet);
  });
});

it("no sniff of the demo samples is called wet or stuck", () => {
  const text = readFileSync(new URL("../../models/demo.sniffs.jsonl", import.meta.url), "utf8");
  const { sniffs } = readSniffFile(text);
  expect(sniffs.length).toBeGreaterThan(100);
  expect(sniffs.map((sniff) => airFault(sniff.air?.cleanAir, sniff.air?.headspace)).filter(Boolean)).toEqual(
    [],
  );
});
