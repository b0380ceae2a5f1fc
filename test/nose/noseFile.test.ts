import fc from "fast-check";
import { expect, it } from "vitest";
import { featureCount, otherView, recipeOf } from "../../src/features/recipe.js";
import { kernelLogits } from "../../src/nose/kernelLogits.js";
import { noseFileWords, parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import { packNumbers, unpackNumbers } from "../../src/nose/packNumbers.js";
import { CHANNELS, handMadeNose, spread } from "../finding/handMadeNose.js";

const NOSE = handMadeNose({ present: spread(20, 1, 3), absent: spread(20, -3, -1), fromMs: [5000, 20_000] });
const TEXT = serialiseNose(NOSE);

it("reads back what was written", () => {
  expect(parseNose(TEXT)).toEqual({ ok: true, value: NOSE });
  expect(parseNose(TEXT, CHANNELS).ok).toBe(true);
});

it("any floats come back bit by bit", () => {
  fc.assert(
    fc.property(fc.float32Array({ noNaN: true }), (list) => {
      expect(unpackNumbers(packNumbers(list), "f32")).toEqual(list);
    }),
  );
});

it("refuses another format version with its name", () => {
  const other = parseNose(TEXT.replace("nidor-nose/1", "nidor-nose/3"));
  expect(other).toEqual({ ok: false, error: { kind: "otherFormat", format: "nidor-nose/3" } });
  expect(!other.ok && noseFileWords(other.error)).toContain("nidor-nose/3");
});

it("refuses another channel layout", () => {
  const longer = [...CHANNELS, { sensor: 2, heaterC: 300, dwellMs: 1000 }];
  expect(parseNose(TEXT, longer)).toEqual({ ok: false, error: { kind: "otherChannels" } });
});

it("names the field that is damaged", () => {
  const short = JSON.stringify({ ...JSON.parse(TEXT), taughtAt: "yesterday" });
  expect(parseNose(short)).toMatchObject({ error: { kind: "badField", field: "taughtAt" } });
  const value = JSON.parse(TEXT);
  value.horizons[0].logistic.weights = packNumbers(Float32Array.of(1, 2));
  expect(parseNose(JSON.stringify(value))).toMatchObject({
    error: { kind: "badField", field: "horizons.0.logistic" },
  });
});

it("reads a nose of the first version, which knew no kernel and mixed five kinds", () => {
  const value = JSON.parse(TEXT);
  for (const horizon of value.horizons) {
    horizon.mix = packNumbers(Float32Array.of(0, 1, 0, 0, 0));
    delete horizon.kernel;
  }
  expect(parseNose(JSON.stringify(value)).ok).toBe(true);
  value.horizons[0].mix = packNumbers(Float32Array.of(0, 1, 0, 0));
  expect(parseNose(JSON.stringify(value))).toMatchObject({ error: { field: "horizons.0.mix" } });
});

it("reads a kernel back, and refuses one whose lists do not fit together", () => {
  const features = NOSE.horizons[0]!.input.centre.length;
  const kernel = {
    widths: [0.5, 2],
    middles: new Int16Array(3 * features).fill(256),
    weights: new Float32Array(3 * NOSE.groups.length).fill(1.5),
    intercepts: new Float32Array(NOSE.groups.length),
  };
  const withKernel = (change: object) =>
    parseNose(
      serialiseNose({
        ...NOSE,
        horizons: NOSE.horizons.map((one) => ({ ...one, kernel: { ...kernel, ...change } })),
      }),
    );
  const read = withKernel({});
  expect(read.ok && read.value.horizons[1]!.kernel).toEqual(kernel);
  for (const change of [
    { middles: new Int16Array(3 * features + 1) },
    { weights: new Float32Array(1) },
    { intercepts: new Float32Array(NOSE.groups.length + 1) },
  ])
    expect(withKernel(change)).toMatchObject({ error: { kind: "badField", field: "horizons.0.kernel" } });
  for (const widths of [[0], [1, -1], []])
    expect(withKernel({ widths })).toMatchObject({ error: { kind: "badField" } });
  // Bells had a single width at first.
  const first = withKernel({ widths: undefined, width: 0.25 });
  expect(first.ok && first.value.horizons[1]!.kernel).toEqual({ ...kernel, widths: [0.25] });
});

it("reads a second kernel back, and refuses one with the features of the first", () => {
  const own = NOSE.horizons[0]!.input.centre.length;
  const other = featureCount(otherView(recipeOf(NOSE.recipe)!), CHANNELS.length);
  expect(other).not.toBe(own);
  const second = (features: number, bells = 3) => ({
    input: {
      humiditySlope: new Float32Array(features),
      usualRise: 0,
      centre: new Float32Array(features),
      scale: new Float32Array(features).fill(1),
    },
    kernel: {
      widths: [1],
      middles: new Int16Array(bells * other).fill(256),
      weights: new Float32Array(3 * NOSE.groups.length).fill(1.5),
      intercepts: new Float32Array(NOSE.groups.length),
    },
  });
  const reads = (secondKernel: ReturnType<typeof second>) =>
    parseNose(
      serialiseNose({ ...NOSE, horizons: NOSE.horizons.map((horizon) => ({ ...horizon, secondKernel })) }),
    );
  const read = reads(second(other));
  expect(read.ok && read.value.horizons[1]!.secondKernel).toEqual(second(other));
  const field = (name: string) => ({ error: { kind: "badField", field: `horizons.0.secondKernel.${name}` } });
  expect(reads(second(own))).toMatchObject(field("input"));
  expect(reads(second(other, 4))).toMatchObject(field("kernel"));
});

it("one bell, counted by hand: at a mean squared difference of 1 it has fallen to 1/e", () => {
  const model = {
    widths: [1],
    middles: Int16Array.of(0, 256),
    weights: Float32Array.of(2, -3),
    intercepts: Float32Array.of(0.5, 0),
  };
  const [one, other] = kernelLogits(model, Float64Array.of(1, 0));
  expect(one).toBeCloseTo(0.5 + 2 / Math.E, 12);
  expect(other).toBeCloseTo(-3 / Math.E, 12);
});

it("never throws, whatever the text", () => {
  fc.assert(
    fc.property(fc.oneof(fc.string(), fc.json()), (text) => {
      expect(parseNose(text).ok).toBe(false);
    }),
  );
});

it("never throws when any part of a good file is lost or replaced", () => {
  const paths: (string | number)[][] = [];
  const walk = (value: unknown, path: (string | number)[]) => {
    if (path.length > 0) paths.push(path);
    if (typeof value === "object" && value !== null)
      for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
  };
  walk(JSON.parse(TEXT), []);
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, replacement) => {
      const value = JSON.parse(TEXT);
      const parent = path.slice(0, -1).reduce((at, key) => at[key], value);
      parent[path.at(-1)!] = replacement;
      const read = parseNose(JSON.stringify(value));
      expect(typeof read.ok).toBe("boolean");
    }),
    { numRuns: 300 },
  );
});
