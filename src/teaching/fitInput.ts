import type { InputMap } from "../nose/nose.js";

/** Raw features of one horizon with what correction needs. */
export interface RawTable {
  readonly rows: number;
  readonly features: number;
  /** Shape [rows, features]. */
  readonly values: Float64Array;
  /** Humidity covariate, log units, NaN where unknown, shape [rows]. */
  readonly rise: Float64Array;
}

/** The correction is fitted only if at least this share of the rows knows its humidity. */
const KNOWN_SHARE = 0.8;
/** Rows beyond one a food that the slope is fitted on at least. Common practice. */
const LEAST_DEGREES = 20;

/**
 * Standardisation and humidity correction, from the rows that count alone.
 *
 * The humidity slope is fitted within rows of the same food, where nothing but the air differs: so a steaming food, or
 * the weather of the day on which a food was sniffed, cannot pass for humidity, nor humidity for the food.
 * It is shrunk by 1 - 1/F, so that a slope no clearer than chance corrects nothing.
 *
 * @param alike - ways to say which rows are of the same food, the strictest first; the first with enough rows is
 *   taken, and without any nothing is corrected; each of shape [rows]
 * @param weight - 0 for rows that are held out, shape [rows]
 * @param share - how much of the humidity's part is taken out, 0 to 1
 * @see James and Stein, Proc. 4th Berkeley Symposium 1 (1961), 361-379 (positive-part shrinkage)
 */
export function fitInput(
  raw: RawTable,
  alike: readonly Int32Array[],
  weight: Float64Array,
  share: number,
): InputMap {
  const { rows, features, rise } = raw;
  const used: number[] = [];
  for (let row = 0; row < rows; row += 1) if (weight[row]! > 0) used.push(row);
  const known = used.filter((row) => !Number.isNaN(rise[row]!));
  const usualRise = known.length === 0 ? 0 : Math.fround(meanAt(known, (row) => rise[row]!));
  const kinds = alike
    .map((kindOf) => rowsByKind(known, kindOf))
    .find((members) => known.length - members.length - 1 >= LEAST_DEGREES);
  const humiditySlope =
    share > 0 && kinds !== undefined && known.length >= KNOWN_SHARE * used.length
      ? slopesWithin(raw, kinds, known.length - kinds.length - 1).map((slope) => share * slope)
      : new Float32Array(features);
  const centre = new Float32Array(features);
  const scale = new Float32Array(features);
  for (let i = 0; i < features; i += 1) {
    const corrected = (row: number) => {
      const excess = Number.isNaN(rise[row]!) ? 0 : rise[row]! - usualRise;
      return raw.values[row * features + i]! - humiditySlope[i]! * excess;
    };
    const mean = meanAt(used, corrected);
    const spread = Math.sqrt(meanAt(used, (row) => (corrected(row) - mean) ** 2));
    centre[i] = mean;
    scale[i] = spread > 1e-9 ? spread : 1;
  }
  return { humiditySlope, usualRise, centre, scale };
}

function meanAt(rows: readonly number[], value: (row: number) => number): number {
  let sum = 0;
  for (const row of rows) sum += value(row);
  return rows.length === 0 ? 0 : sum / rows.length;
}

function rowsByKind(rows: readonly number[], kindOf: Int32Array): number[][] {
  const kinds = new Map<number, number[]>();
  for (const row of rows) kinds.set(kindOf[row]!, [...(kinds.get(kindOf[row]!) ?? []), row]);
  return [...kinds.values()];
}

/** Slope of each feature against the humidity, the mean of each kind taken out of both, shape [features]. */
function slopesWithin(raw: RawTable, kinds: readonly (readonly number[])[], degrees: number): Float32Array {
  const { features } = raw;
  const slopes = new Float32Array(features);
  for (let i = 0; i < features; i += 1) {
    let [xx, xy, yy] = [0, 0, 0];
    for (const members of kinds) {
      const value = (row: number) => raw.values[row * features + i]!;
      const xMean = meanAt(members, (row) => raw.rise[row]!);
      const yMean = meanAt(members, value);
      for (const row of members) {
        const x = raw.rise[row]! - xMean;
        const y = value(row) - yMean;
        xx += x * x;
        xy += x * y;
        yy += y * y;
      }
    }
    if (!(xx > 1e-9) || !(yy > 0)) continue;
    const explained = (xy * xy) / xx;
    const f = explained / Math.max(1e-12, (yy - explained) / degrees);
    slopes[i] = (xy / xx) * Math.max(0, 1 - 1 / f);
  }
  return slopes;
}
