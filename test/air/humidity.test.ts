import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  absoluteHumidityGm3,
  dewPointC,
  moistAirFactor,
  saturationPressurePa,
} from "../../src/air/humidity.js";

// The formulas themselves are held to steam tables in steamTables.test.ts.
describe("saturation pressure", () => {
  it("is raised a little by the air above the water", () => {
    // Source: WMO-No. 8 Annex 4.B (coefficients from memory), at 1013.25 hPa.
    expect(moistAirFactor(101325)).toBeCloseTo(1.004719, 6);
    expect(() => moistAirFactor(0)).toThrow(RangeError);
  });
});

describe("dew point", () => {
  it.each([
    // Source: Alduchov and Eskridge's form turned round, evaluated in plain Python.
    [20, 50, 9.2611],
    [25, 60, 16.6977],
    [30, 80, 26.1709],
    [60, 20, 29.0232],
    [5, 90, 3.4959],
  ])("at %s C and %s %%RH", (temperatureC, humidityPct, wanted) => {
    expect(dewPointC(temperatureC, humidityPct)).toBeCloseTo(wanted, 4);
  });

  it("does not exist in perfectly dry air, and is the temperature itself in saturated air", () => {
    expect(dewPointC(25, 0)).toBeNull();
    expect(dewPointC(25, 100)).toBe(25);
  });

  it("is never above the air's own temperature, one rounding away from saturation", () => {
    const nearlySaturatedPct = 100 - 2 ** -46;
    for (let temperatureC = -40; temperatureC <= 90; temperatureC += 0.37) {
      expect(dewPointC(temperatureC, nearlySaturatedPct)).toBeLessThanOrEqual(temperatureC);
    }
  });

  it("is the temperature at which the same vapour would be saturated", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 90, noNaN: true }),
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        (temperatureC, humidityPct) => {
          const dewC = dewPointC(temperatureC, humidityPct)!;
          const vapourPa = (saturationPressurePa(temperatureC) * humidityPct) / 100;
          expect(dewC).toBeLessThanOrEqual(temperatureC);
          expect(saturationPressurePa(dewC) / vapourPa).toBeCloseTo(1, 9);
        },
      ),
    );
  });
});

describe("absolute humidity", () => {
  it.each([
    // Source: 216.68 e / T with Alduchov and Eskridge's e, and IAPWS in the last column, plain Python.
    [20, 50, 8.6237, 8.6448],
    [25, 60, 13.7867, 13.8217],
    [30, 80, 24.2256, 24.2838],
  ])("at %s C and %s %%RH", (temperatureC, humidityPct, wanted, reference) => {
    expect(absoluteHumidityGm3(temperatureC, humidityPct)).toBeCloseTo(wanted, 4);
    expect(Math.abs(absoluteHumidityGm3(temperatureC, humidityPct) / reference - 1)).toBeLessThan(0.004);
  });

  it("grows thirteenfold and more from a room to the steam over a dish", () => {
    // Source: IAPWS SR1-86 at 57, 60 and 63 C, saturated, against 8.6 g/m3 in the room, plain Python.
    const room = absoluteHumidityGm3(20, 50);
    const over = [57, 60, 63].map((temperatureC) => absoluteHumidityGm3(temperatureC, 100));
    [113.8, 129.7, 147.5].forEach((wanted, at) =>
      expect(Math.abs(over[at]! / wanted - 1)).toBeLessThan(0.006),
    );
    expect(over[0]! / room).toBeGreaterThan(13);
    expect(over[2]! / room).toBeLessThan(17.5);
  });

  it("is nought in dry air and proportional to relative humidity", () => {
    expect(absoluteHumidityGm3(20, 0)).toBe(0);
    expect(absoluteHumidityGm3(20, 80)).toBeCloseTo(2 * absoluteHumidityGm3(20, 40), 12);
  });
});

it.each([
  ["a negative humidity", 20, -1],
  ["a humidity above saturation", 20, 100.1],
  ["no humidity", 20, NaN],
  ["air below the formula's pole", -250, 50],
  ["no temperature", NaN, 50],
  ["endless heat", Infinity, 50],
])("refuses %s", (_what, temperatureC, humidityPct) => {
  expect(() => dewPointC(temperatureC, humidityPct)).toThrow(RangeError);
  expect(() => absoluteHumidityGm3(temperatureC, humidityPct)).toThrow(RangeError);
});
