import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import {
  channelResistance,
  cleanResistance,
  filmOf,
  sensitivities,
  type FilmAge,
  type Surface,
} from "../../src/virtual/channelResistance.js";
import { FAMILIES, FAMILY_TRAITS, familyPpm } from "../../src/virtual/families.js";
import { builtUnit, DEMO_UNIT } from "../../src/virtual/unit.js";

const NEW_FILMS = { logOhmDrift: [0, 0], sensitivityLeft: 1 } as const;
const CLEAN: Surface = { ppm: familyPpm({}), absoluteHumidityGm3: 8.62, ambientC: 20 };
const STEPS_C = [200, 260, 320, 380];
const ohmOf = (
  sensor: number,
  heaterC: number,
  surface: Surface,
  unit = DEMO_UNIT,
  age: FilmAge = NEW_FILMS,
) => channelResistance(sensor, heaterC, surface, unit, age);
const ppmArbitrary = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), {
  minLength: FAMILIES.length,
  maxLength: FAMILIES.length,
});

describe("one channel of an n-type film", () => {
  it("falls with more of any compound, whatever else is there", () => {
    // Reducing gases lower the resistance of n-type oxides (check MX-01).
    fc.assert(
      fc.property(
        ppmArbitrary,
        fc.nat(FAMILIES.length - 1),
        fc.nat(3),
        fc.nat(1),
        (ppm, family, step, sensor) => {
          const more = ppm.map((value, i) => (i === family ? value + 1 : value));
          const before = ohmOf(sensor, STEPS_C[step]!, { ...CLEAN, ppm });
          expect(ohmOf(sensor, STEPS_C[step]!, { ...CLEAN, ppm: more })).toBeLessThan(before);
        },
      ),
    );
  });

  it("is a straight line in log-log far above 1/K, within the exponents of check MX-03", () => {
    for (const sensor of [0, 1]) {
      for (const heaterC of STEPS_C) {
        const at = (ketones: number) => ohmOf(sensor, heaterC, { ...CLEAN, ppm: familyPpm({ ketones }) });
        const first = Math.log10(at(1e6) / at(1e7));
        const second = Math.log10(at(1e7) / at(1e8));
        expect(first).toBeCloseTo(second, 3);
        expect(second).toBeGreaterThan(0.2); // MX-03: beta commonly 0.2 to 0.8
        expect(second).toBeLessThan(0.8);
      }
    }
  });

  it("falls with humidity, and a hot film less than a cool one", () => {
    // Humidity lowers the clean resistance (check MX-05, MX-06: direction); water leaves a hotter film.
    const wet = { ...CLEAN, absoluteHumidityGm3: 17 };
    for (const sensor of [0, 1]) {
      const ratios = STEPS_C.map((heaterC) => ohmOf(sensor, heaterC, wet) / ohmOf(sensor, heaterC, CLEAN));
      ratios.forEach((ratio) => expect(ratio).toBeLessThan(1));
      expect(ratios).toEqual([...ratios].sort((a, b) => a - b));
    }
  });

  it("answers odour less in humid air", () => {
    // Check MX-06: higher humidity lowered the response.
    const answer = (absoluteHumidityGm3: number) => {
      const air = { ...CLEAN, absoluteHumidityGm3 };
      return Math.log(ohmOf(0, 320, air) / ohmOf(0, 320, { ...air, ppm: familyPpm({ fatAldehydes: 1 }) }));
    };
    expect(answer(17)).toBeLessThan(answer(8.62));
  });

  it("stays finite in perfectly dry air", () => {
    expect(ohmOf(0, 200, { ...CLEAN, absoluteHumidityGm3: 0 })).toBeLessThan(1e9);
  });

  it("conducts better when hotter, by Arrhenius's law", () => {
    // Film 0, 0.31 eV between 200 and 300 degrees: exp(0.31 / 8.617e-5 * (1/473.15 - 1/573.15)), by hand 3.767,
    // times the dried humidity exponent, which is 1 at the reference humidity.
    expect(cleanResistance(0, 200, CLEAN) / cleanResistance(0, 300, CLEAN)).toBeCloseTo(3.767, 2);
  });

  it("is most sensitive to each family at that family's own heater temperature", () => {
    FAMILIES.forEach((family, i) => {
      for (const film of [0, 1] as const) {
        const { optimumC, widthC, peakPerPpm } = FAMILY_TRAITS[family];
        const top = optimumC[film];
        expect(sensitivities(film, top)[i]).toBe(peakPerPpm[film]);
        // A Gaussian falls to exp(-1/2) one standard width off its top.
        expect(sensitivities(film, top + widthC)[i]).toBeCloseTo(peakPerPpm[film] * 0.60653, 4);
        expect(sensitivities(film, top - widthC)[i]).toBeCloseTo(peakPerPpm[film] * 0.60653, 4);
      }
    });
  });

  it("gives two films unlike patterns for every family", () => {
    FAMILIES.forEach((family) => {
      const surface = { ...CLEAN, ppm: familyPpm({ [family]: 1 }) };
      const pattern = (sensor: number) =>
        STEPS_C.map((heaterC) => Math.log(ohmOf(sensor, heaterC, surface) / ohmOf(sensor, heaterC, CLEAN)));
      const gap = pattern(0).map((value, i) => Math.abs(value - pattern(1)[i]!));
      expect(Math.max(...gap)).toBeGreaterThan(0.02);
    });
  });

  it("repeats its two films where there are more sensors", () => {
    expect([0, 1, 2, 3].map(filmOf)).toEqual([0, 1, 0, 1]);
  });
});

describe("a unit off the line", () => {
  it("is unlike the demo unit in resistance and in pattern", () => {
    const other = builtUnit(seededRandom(4));
    const surface = { ...CLEAN, ppm: familyPpm({ amines: 1, fatAldehydes: 1 }) };
    const answer = (unit: typeof other) =>
      STEPS_C.map((heaterC) => Math.log(ohmOf(1, heaterC, surface, unit) / ohmOf(1, heaterC, CLEAN, unit)));
    const gaps = answer(other).map((value, i) => Math.abs(value - answer(DEMO_UNIT)[i]!));
    expect(Math.max(...gaps)).toBeGreaterThan(0.01);
    expect(ohmOf(1, 320, CLEAN, other)).not.toBe(ohmOf(1, 320, CLEAN));
  });

  it("drifts and loses sensitivity with age", () => {
    const surface = { ...CLEAN, ppm: familyPpm({ alcohols: 3 }) };
    const old = { logOhmDrift: [0.1, -0.2] as [number, number], sensitivityLeft: 0.5 };
    expect(Math.log(ohmOf(0, 260, CLEAN, DEMO_UNIT, old) / ohmOf(0, 260, CLEAN))).toBeCloseTo(0.1, 12);
    expect(Math.log(ohmOf(1, 260, CLEAN, DEMO_UNIT, old) / ohmOf(1, 260, CLEAN))).toBeCloseTo(-0.2, 12);
    const answer = (age: typeof old) =>
      ohmOf(0, 260, surface, DEMO_UNIT, age) / ohmOf(0, 260, CLEAN, DEMO_UNIT, age);
    expect(answer(old)).toBeGreaterThan(answer({ logOhmDrift: [0, 0], sensitivityLeft: 1 }));
  });
});
