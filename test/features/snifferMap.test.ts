import { expect, it } from "vitest";
import { extractFeatures, featureNames } from "../../src/features/extractFeatures.js";
import { RECIPES } from "../../src/features/recipe.js";
import type { SnifferMap } from "../../src/features/snifferMap.js";
import type { Sniff, SniffPhase } from "../../src/sniff/sniff.js";
import { servedToTwo } from "../transfer/twoSniffers.js";

const SNIFF = servedToTwo({ onFirst: 1, onSecond: 0, seed: 5 })[0]!;
const CHANNELS = SNIFF.sniffer.channels.length;
const MAP: SnifferMap = {
  matrix: Float32Array.from({ length: CHANNELS ** 2 }, (_, at) =>
    at % (CHANNELS + 1) === 0 ? 1.125 : 0.0625,
  ),
  offset: Float32Array.from({ length: CHANNELS }, (_, at) => 0.25 * at - 0.5),
};
const IDENTITY: SnifferMap = {
  matrix: Float32Array.from({ length: CHANNELS ** 2 }, (_, at) => (at % (CHANNELS + 1) === 0 ? 1 : 0)),
  offset: new Float32Array(CHANNELS),
};

/** A sniff whose resistances were put through the map before anything was read off them. */
function throughMap(sniff: Sniff, { matrix, offset }: SnifferMap): Sniff {
  const phase = ({ atMs, ohm }: SniffPhase, moved: boolean): SniffPhase => ({
    atMs,
    ohm: ohm.map((sweep) =>
      sweep.map((_, to) => {
        const sum = sweep.reduce(
          (all, value, from) => all + matrix[to * CHANNELS + from]! * Math.log(value),
          0,
        );
        return Math.exp(sum + (moved ? offset[to]! : 0));
      }),
    ),
  });
  return { ...sniff, headspace: phase(sniff.headspace, true) };
}

it.each(
  RECIPES.filter(({ reference }) => reference === "none").map((recipe) => [recipe.name, recipe] as const),
)("'%s' under a map is the same of mapped resistances", (_name, recipe) => {
  const before = extractFeatures(throughMap(SNIFF, MAP), recipe)!.values;
  const mapped = extractFeatures(SNIFF, recipe, MAP)!.values;
  mapped.forEach((value, at) => expect(value).toBeCloseTo(before[at]!, 9));
});

it.each(RECIPES.map((recipe) => [recipe.name, recipe] as const))(
  "'%s' is as it was under the identity",
  (_name, recipe) => {
    const mapped = extractFeatures(SNIFF, recipe, IDENTITY)!;
    const plain = extractFeatures(SNIFF, recipe)!;
    mapped.values.forEach((value, at) => expect(value).toBeCloseTo(plain.values[at]!, 9));
    expect(mapped.signalToNoise).toBe(plain.signalToNoise);
  },
);

it("an offset moves the log ratio, and no change in time", () => {
  const recipe = RECIPES[0]!;
  const moved = extractFeatures(SNIFF, recipe, { ...IDENTITY, offset: MAP.offset })!.values;
  const plain = extractFeatures(SNIFF, recipe)!.values;
  featureNames(recipe, CHANNELS).forEach((name, at) =>
    expect(moved[at]! - plain[at]!, name).toBeCloseTo(name.startsWith("level") ? MAP.offset[at]! : 0, 9),
  );
});

it("refuses a map of other channels", () => {
  const small = { matrix: Float32Array.from([1]), offset: Float32Array.from([0]) };
  expect(() => extractFeatures(SNIFF, RECIPES[0]!, small)).toThrow(RangeError);
});
