/** Checks of the air formulas against published and independently computed values, each named by its id. */
import { describe, expect, it } from "vitest";
import { absoluteHumidityGm3, dewPointC, moistAirFactor } from "../../src/air/humidity.js";
import { check, hasCheckValues, idsStarting } from "./checkValues.js";

interface AirCheck {
  readonly fn: string;
  readonly t: number;
  readonly rh: number;
  readonly out: number | string;
}

describe.skipIf(!hasCheckValues)("humidity", () => {
  it("is checked in full", () => expect(idsStarting("HU-E")).toHaveLength(12));

  it.each(["HU-E1", "HU-E2", "HU-E3", "HU-E4", "HU-E5"])("%s: dew point", (id) => {
    const one = check<AirCheck & { AE96: number; WMO8: number; iapws?: number }>(id);
    const dewC = dewPointC(one.t, one.rh);
    expect(dewC).toBeCloseTo(one.AE96, 4);
    expect(Math.abs(dewC! - one.WMO8)).toBeLessThan(0.02);
    if (one.iapws !== undefined) expect(Math.abs(dewC! - one.iapws)).toBeLessThan(0.05);
  });

  it("HU-E6: perfectly dry air has no dew point", () => {
    const one = check<AirCheck>("HU-E6");
    expect(one.out).toContain("no value");
    expect(dewPointC(one.t, one.rh)).toBeNull();
  });

  it.each(["HU-E7", "HU-E8", "HU-E9"])("%s: absolute humidity", (id) => {
    const one = check<AirCheck & { iapws: number }>(id);
    expect(absoluteHumidityGm3(one.t, one.rh)).toBeCloseTo(one.out as number, 4);
    expect(Math.abs(absoluteHumidityGm3(one.t, one.rh) / one.iapws - 1)).toBeLessThan(0.003);
  });

  it.each(["HU-E10", "HU-E11"])("%s: another formula agrees within half a per cent", (id) => {
    const one = check<AirCheck>(id);
    expect(Math.abs(absoluteHumidityGm3(one.t, one.rh) / (one.out as number) - 1)).toBeLessThan(0.005);
  });

  it("HU-E12: enhancement by the air above the water", () => {
    const one = check<{ p_hPa: number; out: number }>("HU-E12");
    expect(moistAirFactor(one.p_hPa * 100)).toBeCloseTo(one.out, 6);
  });
});
