import { expect, it } from "vitest";
import { extractFeatures } from "../../src/features/extractFeatures.js";
import { RECIPES } from "../../src/features/recipe.js";
import { mapFeatures, type SnifferMap } from "../../src/features/snifferMap.js";
import type { Sniff, SniffPhase } from "../../src/sniff/sniff.js";
import { servedToTwo } from "../transfer/twoSniffers.js";

const SNIFF = servedToTwo({ onFirst: 1, onSecond: 0, seed: 5 })[0]!;
const CHANNELS = SNIFF.sniffer.channels.length;

/** The same sniff with every sweep's log resistances put through a matrix, and headspace moved by the offset. */
function throughMatrix(sniff: Sniff, { matrix, offset }: SnifferMap): Sniff {
  const phase = ({ atMs, ohm }: SniffPhase, moved: boolean): SniffPhase => ({
    atMs,
    ohm: ohm.map((sweep) =>
      sweep.map((_, to) =>
        Math.exp(
          sweep.reduce((sum, value, from) => sum + matrix[to * CHANNELS + from]! * Math.log(value), 0) +
            (moved ? offset[to]! : 0),
        ),
      ),
    ),
  });
  return { ...sniff, cleanAir: undefined, headspace: phase(sniff.headspace, true) };
}

it.each(
  RECIPES.filter(({ reference }) => reference === "none").map((recipe) => [recipe.name, recipe] as const),
)("mapping the features of recipe '%s' is extracting those of mapped resistances", (_name, recipe) => {
  const map = {
    matrix: Float32Array.from({ length: CHANNELS ** 2 }, (_, at) =>
      at % (CHANNELS + 1) === 0 ? 1.125 : 0.0625,
    ),
    offset: Float32Array.from({ length: CHANNELS }, (_, at) => 0.25 * at - 0.5),
  };
  const direct = extractFeatures(throughMatrix(SNIFF, map), recipe)!.values;
  const mapped = mapFeatures(map, recipe, extractFeatures(SNIFF, recipe)!.values);
  mapped.forEach((value, at) => expect(value).toBeCloseTo(direct[at]!, 9));
});

it("changes nothing as the identity, and refuses features of another number of channels", () => {
  const identity = { matrix: Float32Array.from([1, 0, 0, 1]), offset: new Float32Array(2) };
  const rich = RECIPES.find(({ id }) => id === 2)!;
  // Differences are of the levels: 1 - 2 = -1. Counted by hand.
  const values = Float64Array.from([1, 2, 3, 4, 5, 6, 7, 8, -1]);
  expect(mapFeatures(identity, rich, values)).toEqual(values);
  expect(() => mapFeatures(identity, rich, values.slice(1))).toThrow(RangeError);
});
