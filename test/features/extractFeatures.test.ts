import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { extractFeatures, featureNames } from "../../src/features/extractFeatures.js";
import { humidityRise } from "../../src/features/humidityRise.js";
import { featureCount, otherView, RECIPES } from "../../src/features/recipe.js";
import type { Sniff } from "../../src/sniff/sniff.js";

const [RATIO, RATIO_RICH, LEVEL, , START] = RECIPES as readonly (typeof RECIPES)[number][];

function sniffOf(ohm: number[][], clean?: number[][], stepMs = 2000): Sniff {
  const phase = (rows: number[][]) => ({ atMs: rows.map((_, i) => stepMs * i), ohm: rows });
  return {
    format: "nidor-sniff/1",
    id: "s",
    takenAt: "2026-11-25T18:30:00Z",
    sniffer: { id: "a", channels: ohm[0]!.map((_, sensor) => ({ sensor, heaterC: 300, dwellMs: 500 })) },
    plate: "p",
    occasion: "o",
    dish: "broth",
    groups: {},
    cleanAir: clean === undefined ? undefined : phase(clean),
    headspace: phase(ohm),
  };
}

const FALLING = [800, 400, 200, 100].map((ohm) => [ohm, 2 * ohm]);
const STEADY = [1000, 1000, 1000, 1000].map((ohm) => [ohm, 2 * ohm]);

it("counted by hand: from 1000 ohm of clean air to 800, 400, 200, 100", () => {
  const { values } = extractFeatures(sniffOf(FALLING, STEADY), RATIO!)!;
  // One sweep a quarter. Level ln(100/1000), uptake ln(100/800), the same in both channels.
  const [level, uptake] = [Math.log(0.1), Math.log(1 / 8)];
  [level, level, uptake, uptake].forEach((value, i) => expect(values[i]).toBeCloseTo(value, 12));
});

it("a straight line in the logarithm has no bend, and like channels no difference", () => {
  const { values } = extractFeatures(
    sniffOf(
      [1600, 800, 400, 200].map((r) => [r, r]),
      STEADY.map(([r]) => [r!, r!]),
    ),
    RATIO_RICH!,
  )!;
  values.slice(4).forEach((value) => expect(value).toBeCloseTo(0, 12));
});

describe("recipes that keep the spread", () => {
  const byName = (part: string) => RECIPES.find(({ name }) => name.startsWith(part))!;
  const spread = Math.log(Math.LN2 * Math.sqrt(5 / 4) + 1e-3);
  // The logarithms of 800, 400, 200, 100 lie 3/2, 1/2, -1/2 and -3/2 times ln 2 off their mean: counted by hand, their
  // standard deviation is ln 2 times the root of (9/4 + 1/4 + 1/4 + 9/4) / 4 = 5/4.
  it("by quarters, counted by hand", () => {
    const { values } = extractFeatures(sniffOf(FALLING), byName("log level by quarters"))!;
    [800, 1600, 400, 800, 200, 400, 100, 200].forEach((ohm, at) =>
      expect(values[at]).toBeCloseTo(Math.log(ohm), 12),
    );
    expect(values[8]).toBeCloseTo(spread, 12);
    expect(values[10]).toBeCloseTo(-Math.LN2, 12);
  });

  it("mean, start and end against it, counted by hand", () => {
    const { values } = extractFeatures(sniffOf(FALLING), byName("mean log level"))!;
    expect(values[0]).toBeCloseTo(Math.log(Math.sqrt(400 * 200)), 12);
    expect(values[2]).toBeCloseTo(1.5 * Math.LN2, 12);
    expect(values[4]).toBeCloseTo(-1.5 * Math.LN2, 12);
    expect(values[6]).toBeCloseTo(spread, 12);
  });

  it("set against clean air they forget the size of the sensor, and against nothing only the levels see it", () => {
    const scaled = (rows: number[][]) => rows.map((sweep) => sweep.map((ohm) => 7 * ohm));
    for (const recipe of RECIPES.filter(({ course }) => course === "quarters" || course === "mean")) {
      const one = extractFeatures(sniffOf(FALLING, STEADY), recipe)!.values;
      const other = extractFeatures(sniffOf(scaled(FALLING), scaled(STEADY)), recipe)!.values;
      const levels = recipe.reference === "cleanAir" ? 0 : recipe.course === "quarters" ? 8 : 2;
      one.forEach((value, at) => expect(other[at]).toBeCloseTo(value + (at < levels ? Math.log(7) : 0), 9));
    }
  });
});

it.each(RECIPES.map((recipe) => [recipe.name, recipe] as const))(
  "%s: as many values as names",
  (_name, recipe) => {
    const { values } = extractFeatures(sniffOf(FALLING, STEADY), recipe)!;
    expect(values).toHaveLength(featureCount(recipe, 2));
    expect(featureNames(recipe, 2)).toHaveLength(values.length);
    expect(values.every(Number.isFinite)).toBe(true);
  },
);

it("the other view of a sniff goes by the mean where its recipe goes by quarters, and asks for no more clean air", () => {
  for (const recipe of RECIPES) {
    const other = otherView(recipe);
    expect(other.course).toBe(recipe.course === "quarters" ? "mean" : "quarters");
    expect(other.reference === "cleanAir").toBe(recipe.reference === "cleanAir");
  }
});

describe("relations", () => {
  const factor = fc.double({ min: 0.01, max: 100, noNaN: true });

  it("a sensor of another size gives the same ratios: all resistances times a factor (Clifford and Tuma 1983)", () => {
    fc.assert(
      fc.property(factor, (times) => {
        const scaled = (rows: number[][]) => rows.map((sweep) => sweep.map((ohm) => ohm * times));
        const one = extractFeatures(sniffOf(FALLING, STEADY), RATIO_RICH!)!.values;
        const other = extractFeatures(sniffOf(scaled(FALLING), scaled(STEADY)), RATIO_RICH!)!.values;
        one.forEach((value, i) => expect(other[i]).toBeCloseTo(value, 9));
      }),
    );
  });

  it("the level recipe does see that factor, and only in its levels", () => {
    const scaled = FALLING.map((sweep) => sweep.map((ohm) => 3 * ohm));
    const one = extractFeatures(sniffOf(FALLING), LEVEL!)!.values;
    const other = extractFeatures(sniffOf(scaled), LEVEL!)!.values;
    one.forEach((value, i) => expect(other[i]).toBeCloseTo(value + (i < 2 ? Math.log(3) : 0), 12));
  });

  it("the pace of the sweeps does not matter, nor do more sweeps on the same steps", () => {
    const slow = extractFeatures(sniffOf(FALLING, STEADY, 9000), RATIO!)!.values;
    expect([...slow]).toEqual([...extractFeatures(sniffOf(FALLING, STEADY), RATIO!)!.values]);
  });

  it("one sweep is a level without a course", () => {
    const { values } = extractFeatures(sniffOf([[500, 500]]), START!)!;
    values.forEach((value) => expect(value).toBeCloseTo(0, 12));
  });
});

describe("what is missing", () => {
  it("no clean air: no ratio, and said so", () => {
    expect(extractFeatures(sniffOf(FALLING), RATIO!)).toBeNull();
    const level = extractFeatures(sniffOf(FALLING), LEVEL!)!;
    expect(level.notes).toEqual(["noCleanAir", "noHumidity"]);
    expect(level.signalToNoise).toBeNull();
  });

  it("two clean-air sweeps: no noise floor", () => {
    expect(extractFeatures(sniffOf(FALLING, STEADY.slice(0, 2)), RATIO!)!.notes).toContain("noNoiseFloor");
  });

  it("temperature, humidity and pressure change no feature", () => {
    const sniff = sniffOf(FALLING, STEADY);
    const air = { temperatureC: 31, humidityPct: 80, pressurePa: 99_000 };
    for (const recipe of RECIPES)
      expect(
        extractFeatures({ ...sniff, air: { cleanAir: air, headspace: { ...air, humidityPct: 40 } } }, recipe)!
          .values,
      ).toEqual(extractFeatures(sniff, recipe)!.values);
  });
});

it("signal to noise: a response of ten noise deviations reads ten", () => {
  // Clean air alternating by 2d gives successive differences of 2d, so sigma = 2d / sqrt(2) (von Neumann 1941).
  const d = 0.001;
  const clean = [1, -1, 1, -1, 1, -1].map((sign) => [1000 * Math.exp(sign * d)]);
  const sigma = (2 * d) / Math.SQRT2;
  const over = [0, 0, 0, 0].map(() => [1000 * Math.exp(10 * sigma)]);
  // The reference is the median of the last three sweeps, one of the two extremes.
  const { signalToNoise } = extractFeatures(sniffOf(over, clean), RATIO!)!;
  expect(Math.abs(signalToNoise! - 10)).toBeLessThan(1);
});

it("humidity rise is the log ratio of absolute humidities: twice the vapour at one temperature is ln 2", () => {
  const sniff = sniffOf(FALLING, STEADY);
  const air = {
    cleanAir: { temperatureC: 25, humidityPct: 40 },
    headspace: { temperatureC: 25, humidityPct: 80 },
  };
  expect(humidityRise({ ...sniff, air }, "cleanAir")).toBeCloseTo(Math.LN2, 12);
  expect(humidityRise({ ...sniff, air: { headspace: air.headspace } }, "cleanAir")).toBeNull();
  // 23.0 g/m3 is saturated air of 25 C in every handbook table; four fifths of it are 18.4. Value from memory.
  expect(Math.exp(humidityRise({ ...sniff, air: { headspace: air.headspace } }, "none")!)).toBeCloseTo(
    18.4,
    1,
  );
});
