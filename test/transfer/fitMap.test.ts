/** Direct standardisation: known maps come back, and the ridge is the one of an independent program. */
import { expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { chooseMap } from "../../src/transfer/chooseMap.js";
import { fitMap, pairSums, totalSums, type MapChoice } from "../../src/transfer/fitMap.js";
import type { PairedLevels } from "../../src/transfer/pairedLevels.js";

const SECOND = [
  [-0.2, 0.1, -0.5],
  [-0.9, -0.4, -0.3],
  [-0.1, -0.7, 0.2],
  [-0.6, -0.2, -0.8],
  [-0.3, -0.9, -0.4],
  [0.1, -0.3, -0.6],
];
const FIRST = [
  [-0.3, 0.0, -0.6],
  [-1.0, -0.3, -0.2],
  [0.0, -0.9, 0.1],
  [-0.5, -0.3, -1.0],
  [-0.4, -0.8, -0.3],
  [0.2, -0.4, -0.3],
];
const ROWS = SECOND.map((row, i) => pairOf(`p${i}`, [FIRST[i]!], [row]));
const SUMS = totalSums(ROWS.map(pairSums));
/** Channels 0 and 1 are of one sensor. */
const SENSORS = [0, 0, 1];

function pairOf(plate: string, first: number[][], second: number[][]): PairedLevels {
  return {
    plate,
    first: first.map((row) => Float64Array.from(row)),
    second: second.map((row) => Float64Array.from(row)),
  };
}

// Made by NumPy 2.4.6: numpy.linalg.lstsq (singular values) on centred rows with sqrt(strength x mean variance) I below.
it.each([
  [
    "direct",
    0.1,
    [
      1.11385057, -0.00346713, -0.01773026, -0.17310831, 0.8353703, -0.12257566, 0.14072536, -0.17367424,
      0.85994465,
    ],
    [0.02947124, -0.22258491, -0.06191671],
  ],
  [
    "piecewise",
    0.01,
    [1.12150524, 0.00563858, 0.0, -0.20237978, 0.88232743, 0.0, 0.0, 0.0, 0.96585865],
    [0.04275718, -0.16452895, 0.00301013],
  ],
  [
    "slopeAndOffset",
    0.01,
    [1.12123661, 0.0, 0.0, 0.0, 0.89170792, 0.0, 0.0, 0.0, 0.96585865],
    [0.0404122, -0.09331683, 0.00301013],
  ],
  ["offset", 0, [1, 0, 0, 0, 1, 0, 0, 0, 1], [0.0, -0.05, 0.01666667]],
] as const)("the %s fit is NumPy's least squares", (method, strength, matrix, offset) => {
  const map = fitMap(SUMS, { method, strength }, SENSORS);
  matrix.forEach((value, at) => expect(map.matrix[at]).toBeCloseTo(value, 6));
  offset.forEach((value, at) => expect(map.offset[at]).toBeCloseTo(value, 6));
});

it("leaving a pair out by its sums is leaving it out", () => {
  const choice: MapChoice = { method: "direct", strength: 0.01 };
  const without = fitMap(totalSums(ROWS.map(pairSums), [2]), choice, SENSORS);
  const never = fitMap(totalSums(ROWS.filter((_, i) => i !== 2).map(pairSums)), choice, SENSORS);
  expect(without).toEqual(never);
});

/** Pairs of three rows: the first sniffer is `map` of the second, give or take some noise. */
function madePairs(count: number, seed: number, map: (x: number[]) => number[], noise = 0): PairedLevels[] {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, plate) => {
    const second = Array.from({ length: 3 }, () => [0, 1, 2, 3].map(() => standardNormal(random)));
    const first = second.map((row) => map(row).map((value) => value + noise * standardNormal(random)));
    return pairOf(`plate ${plate}`, first, second);
  });
}
const FOUR = [0, 0, 1, 1];
const ONES = [1, 1, 1, 1];

it("finds a known affine map of all channels again", () => {
  const matrix = [1.1, 0.2, 0, -0.3, 0, 0.8, 0.1, 0, 0.4, 0, 1.3, 0, 0, -0.2, 0.1, 0.9];
  const offset = [0.5, -0.2, 0, 1];
  const known = (x: number[]) =>
    offset.map(
      (start, to) => start + x.reduce((sum, value, from) => sum + matrix[to * 4 + from]! * value, 0),
    );
  const { choice, map, heldOut } = chooseMap(madePairs(12, 1, known), FOUR, ONES);
  expect(choice.method).toBe("direct");
  matrix.forEach((value, at) => expect(map.matrix[at]).toBeCloseTo(value, 3));
  offset.forEach((value, at) => expect(map.offset[at]).toBeCloseTo(value, 3));
  heldOut.forEach(({ before, after }) => expect(after).toBeLessThan(before / 1000));
});

it("finds swapped channels", () => {
  const { map } = chooseMap(
    madePairs(12, 2, ([a, b, c, d]) => [d!, b!, a!, c!]),
    FOUR,
    ONES,
  );
  const swap = [0, 0, 0, 1, 0, 1, 0, 0, 1, 0, 0, 0, 0, 0, 1, 0];
  swap.forEach((value, at) => expect(map.matrix[at]).toBeCloseTo(value, 3));
});

it("stays simple where the sniffers are alike, and makes little of noise", () => {
  const { choice, heldOut } = chooseMap(
    madePairs(20, 3, (x) => x, 0.1),
    FOUR,
    ONES,
  );
  // Held to the identity as strongly as it can be, or nothing but an offset.
  expect(choice.method === "offset" || choice.strength === 1).toBe(true);
  const worse =
    heldOut.reduce((sum, { before, after }) => sum + after ** 2 / before ** 2, 0) / heldOut.length;
  expect(worse).toBeLessThan(1.3);
});

it("takes slopes and offsets, or an offset, where no more than that differs", () => {
  const stretched = chooseMap(
    madePairs(8, 4, (x) => x.map((v, i) => 0.2 + (1 + 0.2 * i) * v), 0.02),
    FOUR,
    ONES,
  );
  expect(stretched.choice.method).toBe("slopeAndOffset");
  const moved = chooseMap(
    madePairs(8, 5, (x) => x.map((v, i) => v + 0.3 * i), 0.02),
    FOUR,
    ONES,
  );
  expect(moved.map.offset[3]).toBeCloseTo(0.9, 1);
});

it("keeps within a sensor where only its own steps mix", () => {
  const mixed = ([a, b, c, d]: number[]) => [
    0.7 * a! + 0.5 * b!,
    1.2 * b! - 0.4 * a!,
    c! + 0.6 * d!,
    0.5 * d!,
  ];
  expect(chooseMap(madePairs(8, 6, mixed, 0.05), FOUR, ONES).choice.method).toBe("piecewise");
});

it("gives the same whatever the order of the pairs, and no less for another unit", () => {
  const pairs = madePairs(9, 7, (x) => x.map((v, i) => 0.1 + (1 - 0.1 * i) * v), 0.05);
  const here = chooseMap(pairs, FOUR, ONES);
  const there = chooseMap(pairs.toReversed(), FOUR, [2, 2, 2, 2]);
  expect(there.choice).toEqual(here.choice);
  there.heldOut.forEach(({ after }, i) => expect(2 * after).toBeCloseTo(here.heldOut.at(-1 - i)!.after, 5));
});

it("refuses to choose from two pairs", () =>
  expect(() =>
    chooseMap(
      madePairs(2, 8, (x) => x),
      FOUR,
      ONES,
    ),
  ).toThrow(RangeError));
