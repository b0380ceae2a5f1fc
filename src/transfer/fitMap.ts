/** Direct standardisation: the map from the second sniffer's log ratios to the first's, from plates sniffed on both. */
import type { SnifferMap } from "../features/snifferMap.js";
import { cholesky, choleskySolve } from "../stats/linearAlgebra.js";
import type { PairedLevels } from "./pairedLevels.js";

/** What a channel of the first sniffer may be made from. */
export const MAP_METHODS = [
  "offset", // itself, moved
  "slopeAndOffset", // itself, stretched and moved: for few pairs
  "piecewise", // all heater steps of its own sensor
  "direct", // every channel
] as const;
export type MapMethod = (typeof MAP_METHODS)[number];

/** A method, and how strongly its matrix is held to the identity. */
export interface MapChoice {
  readonly method: MapMethod;
  /** Ridge strength as a share of the channels' mean variance; 0 for `offset`, which has no matrix to hold. */
  readonly strength: number;
}

/** Ridge strengths to choose from: from next to none to almost nothing but the offset. Common practice: by decades. */
const STRENGTHS = [1, 0.1, 0.01, 1e-3, 1e-4, 1e-6];

/** All choices, the simplest first, so that a draw goes to the simpler one. */
export const MAP_CHOICES: readonly MapChoice[] = [
  { method: "offset", strength: 0 },
  ...(["slopeAndOffset", "piecewise", "direct"] as const).flatMap((method) =>
    STRENGTHS.map((strength) => ({ method, strength })),
  ),
];

/** Sums over the rows of some pairs: all that a fit needs, so that a pair is left out by taking its sums away. */
export interface PairSums {
  readonly rows: number;
  /** Shape [channels]. */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Products, shape [channels, channels]; `xy` has a row for each channel of the second sniffer. */
  readonly xx: Float64Array;
  readonly xy: Float64Array;
}

/** Sums of one pair; x is the second sniffer, y the first. */
export function pairSums({ first, second }: PairedLevels): PairSums {
  const channels = first[0]!.length;
  const sums = emptySums(channels);
  second.forEach((x, row) => {
    const y = first[row]!;
    for (let i = 0; i < channels; i += 1) {
      sums.x[i]! += x[i]!;
      sums.y[i]! += y[i]!;
      for (let j = 0; j < channels; j += 1) {
        sums.xx[i * channels + j]! += x[i]! * x[j]!;
        sums.xy[i * channels + j]! += x[i]! * y[j]!;
      }
    }
  });
  return { ...sums, rows: first.length };
}

/** Sums of all pairs but those at the places left out. */
export function totalSums(pairs: readonly PairSums[], without: readonly number[] = []): PairSums {
  const total = emptySums(pairs[0]!.x.length);
  let rows = 0;
  pairs.forEach((pair, place) => {
    if (without.includes(place)) return;
    rows += pair.rows;
    for (const key of ["x", "y", "xx", "xy"] as const)
      pair[key].forEach((value, at) => (total[key][at]! += value));
  });
  return { ...total, rows };
}

function emptySums(channels: number): PairSums {
  const square = () => new Float64Array(channels * channels);
  return {
    rows: 0,
    x: new Float64Array(channels),
    y: new Float64Array(channels),
    xx: square(),
    xy: square(),
  };
}

/**
 * The map that fits best, with its matrix shrunk towards the identity: two sniffers of one build differ little, and
 * what the pairs do not show stays as it is.
 *
 * @param sums - over at least one row
 * @param sensors - sensor of each channel, in the order of the levels, shape [channels]
 * @throws {RangeError} without a row
 * @see Wang, Veltkamp and Kowalski, Anal. Chem. 63 (1991), 2750-2756 (direct and piecewise direct standardisation);
 *   Hoerl and Kennard, Technometrics 12 (1970), 55-67 (ridge regression)
 */
export function fitMap(
  sums: PairSums,
  { method, strength }: MapChoice,
  sensors: readonly number[],
): SnifferMap {
  if (sums.rows < 1) throw new RangeError("a map needs a pair");
  const channels = sensors.length;
  const matrix = new Float32Array(channels * channels);
  for (let i = 0; i < channels; i += 1) matrix[i * channels + i] = 1;
  if (method !== "offset")
    for (const block of blocksOf(method, sensors)) addBlock(matrix, sums, block, strength);
  const offset = Float32Array.from({ length: channels }, (_, to) => {
    let rest = sums.y[to]!;
    for (let from = 0; from < channels; from += 1) rest -= matrix[to * channels + from]! * sums.x[from]!;
    return rest / sums.rows;
  });
  return { matrix, offset };
}

/** Channels that are made from one another. */
function blocksOf(method: Exclude<MapMethod, "offset">, sensors: readonly number[]): number[][] {
  const all = [...sensors.keys()];
  if (method === "slopeAndOffset") return all.map((channel) => [channel]);
  if (method === "direct") return [all];
  return [...new Set(sensors)].map((sensor) => all.filter((channel) => sensors[channel] === sensor));
}

/** Solves (X'X + k I) D = X'(Y - X) on centred rows of one block; the matrix is I + D. */
function addBlock(matrix: Float32Array, sums: PairSums, block: readonly number[], strength: number): void {
  const { rows, x, y, xx, xy } = sums;
  const channels = x.length;
  const size = block.length;
  const gram = new Float64Array(size * size);
  block.forEach((i, a) =>
    block.forEach((j, b) => (gram[a * size + b] = xx[i * channels + j]! - (x[i]! * x[j]!) / rows)),
  );
  const variance = block.reduce((sum, _, a) => sum + gram[a * size + a]!, 0) / size;
  // Where the pairs do not differ at all nothing can be fitted but the offset.
  if (!(variance > 1e-12)) return;
  const held = gram.map((value, at) => (at % (size + 1) === 0 ? value + strength * variance : value));
  const factor = cholesky(held, size);
  block.forEach((to, b) => {
    const target = Float64Array.from(
      block,
      (from, a) => xy[from * channels + to]! - (x[from]! * y[to]!) / rows - gram[a * size + b]!,
    );
    choleskySolve(factor, target, size).forEach((value, a) => {
      matrix[to * channels + block[a]!]! += value;
    });
  });
}
