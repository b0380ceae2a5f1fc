// The humidity of the product against steam tables: check-values HU-01 to HU-06 and the table below them.
import { describe, expect, it } from "vitest";
import {
  absoluteHumidityGm3,
  dewPointC,
  saturationPressurePa,
  saturationPressureWmoPa,
} from "../../src/air/humidity.js";
import { saturationIf97Pa, saturationSr186Pa } from "./steamTables.js";

describe("the references themselves", () => {
  it.each([
    // HU-05. Source: IAPWS-IF97 release 2007, table 35, nine digits (values from memory, run again), MPa.
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])("IF97 at %s K gives its release's verification value", (kelvin, megapascal) => {
    expect(saturationIf97Pa(kelvin) / 1e6 / megapascal).toBeCloseTo(1, 8);
  });

  it.each([
    // HU-05. Source: a handbook's steam table, four digits, MPa.
    [273.16, 0.000612],
    [290, 0.00192],
    [300, 0.003537],
    [310, 0.006231],
    [320, 0.010546],
    [330, 0.017213],
  ])("IF97 at %s K lies within the last digit of the handbook’s steam table", (kelvin, megapascal) => {
    expect(Math.abs(saturationIf97Pa(kelvin) / 1e6 - megapascal)).toBeLessThan(1e-6);
  });

  it.each([
    // HU-06. Source: IAPWS SR1-86(1992): triple point and normal boiling point, Pa.
    [273.16, 611.657, 3],
    [373.1243, 101_325, 0],
  ])("SR1-86 at %s K gives %s Pa", (kelvin, pascal, digits) => {
    expect(saturationSr186Pa(kelvin)).toBeCloseTo(pascal, digits);
  });

  it("agree with one another to 0.01 % over the kitchen's range", () => {
    for (let celsius = 0.01; celsius <= 60; celsius += 0.5) {
      const kelvin = 273.15 + celsius;
      expect(Math.abs(saturationIf97Pa(kelvin) / saturationSr186Pa(kelvin) - 1)).toBeLessThan(1e-4);
    }
  });
});

describe("the short formulas", () => {
  it.each([
    // Table of check-values section 2: reference (SR1-86) in hPa; HU-01 in hPa and its error in per cent; HU-02 the same.
    [0.01, 6.1166, 6.1138, -0.045, 6.1164, -0.002],
    [5, 8.7253, 8.7156, -0.111, 8.7174, -0.09],
    [10, 12.2811, 12.2602, -0.17, 12.2603, -0.17],
    [15, 17.0568, 17.0198, -0.217, 17.0167, -0.235],
    [20, 23.3919, 23.3344, -0.246, 23.326, -0.282],
    [25, 31.6982, 31.6174, -0.255, 31.6006, -0.308],
    [30, 42.4692, 42.3665, -0.242, 42.3372, -0.311],
    [35, 56.2906, 56.1757, -0.204, 56.1284, -0.288],
    [40, 73.8511, 73.7472, -0.141, 73.6746, -0.239],
    [45, 95.9534, 95.9045, -0.051, 95.7971, -0.163],
    [50, 123.5248, 123.6058, 0.066, 123.4516, -0.059],
    [55, 157.6284, 157.9579, 0.209, 157.7416, 0.072],
    [60, 199.4738, 200.23, 0.379, 199.9329, 0.23],
  ])("at %s C have the errors of the table", (celsius, reference, alduchov, alduchovErr, wmo, wmoErr) => {
    const line = saturationSr186Pa(273.15 + celsius);
    expect(line / 100).toBeCloseTo(reference, 4);
    expect(saturationPressurePa(celsius) / 100).toBeCloseTo(alduchov, 4);
    expect(saturationPressureWmoPa(celsius) / 100).toBeCloseTo(wmo, 4);
    expect(100 * (saturationPressurePa(celsius) / line - 1)).toBeCloseTo(alduchovErr, 3);
    expect(100 * (saturationPressureWmoPa(celsius) / line - 1)).toBeCloseTo(wmoErr, 3);
  });

  it.each([
    // Column "sat. AH" of the same table, by SR1-86 and the ideal gas (HU-04), g/m3.
    [0.01, 4.852],
    [10, 9.398],
    [20, 17.29],
    [25, 23.036],
    [30, 30.355],
    [40, 51.099],
    [50, 82.825],
    [60, 129.735],
  ])("saturated air at %s C holds %s g/m3, to 0.4 %%", (celsius, reference) => {
    const byLine = (0.0021668 * saturationSr186Pa(273.15 + celsius) * 1000) / (273.15 + celsius);
    expect(byLine).toBeCloseTo(reference, 2);
    expect(Math.abs(absoluteHumidityGm3(celsius, 100) / reference - 1)).toBeLessThan(0.004);
  });

  it.each([
    // HU-E1 to HU-E3: dew points on the IAPWS line, kelvin of tolerance as the check names it.
    [20, 50, 9.2735],
    [25, 60, 16.7018],
    [30, 80, 26.1688],
  ])("the dew point at %s C and %s %%RH lies within 0.05 K of the reference line", (celsius, rh, dewC) => {
    const vapourPa = (saturationSr186Pa(273.15 + celsius) * rh) / 100;
    expect(saturationSr186Pa(273.15 + dewC) / vapourPa).toBeCloseTo(1, 5);
    expect(Math.abs((dewPointC(celsius, rh) ?? Number.NaN) - dewC)).toBeLessThan(0.05);
  });
});
