import type { InputMap } from "../nose/nose.js";

/** Raw features of one horizon with what correction needs. */
export interface RawTable {
  readonly rows: number;
  readonly features: number;
  /** Shape [rows, features]. */
  readonly values: Float64Array;
  /** Humidity rise, NaN where unknown, shape [rows]. */
  readonly rise: Float64Array;
}

/** The correction is fitted only if at least this share of the rows knows its humidity. */
const KNOWN_SHARE = 0.8;
const LEAST_ROWS = 20;

/**
 * Standardisation and humidity correction, from the rows that count alone.
 *
 * The humidity slope is a partial one, within rows of one truth, so that a steaming group does not pass for humidity.
 * It is shrunk by 1 - 1/F, so that a slope no clearer than chance corrects nothing.
 *
 * @param truth - shape [rows, groups]; rows with the same truths are compared with each other
 * @param weight - 0 for rows that are held out, shape [rows]
 * @see James and Stein, Proc. 4th Berkeley Symposium 1 (1961), 361-379 (positive-part shrinkage)
 */
export function fitInput(raw: RawTable, truth: Int8Array, weight: Float64Array, corrects: boolean): InputMap {
  const { rows, features, rise } = raw;
  const used: number[] = [];
  for (let row = 0; row < rows; row += 1) if (weight[row]! > 0) used.push(row);
  const known = used.filter((row) => !Number.isNaN(rise[row]!));
  const usualRise = known.length === 0 ? 0 : Math.fround(meanAt(known, (row) => rise[row]!));
  const humiditySlope =
    corrects && known.length >= LEAST_ROWS && known.length >= KNOWN_SHARE * used.length
      ? partialSlopes(raw, known, truth, usualRise)
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

function partialSlopes(
  raw: RawTable,
  rows: readonly number[],
  truth: Int8Array,
  usualRise: number,
): Float32Array {
  const { features } = raw;
  const groups = truth.length / raw.rows;
  const kinds = new Map<string, number[]>();
  for (const row of rows) {
    const kind = truth.subarray(row * groups, (row + 1) * groups).join();
    kinds.set(kind, [...(kinds.get(kind) ?? []), row]);
  }
  const slopes = new Float32Array(features);
  const degrees = rows.length - kinds.size - 1;
  if (degrees < 10) return slopes;
  for (let i = 0; i < features; i += 1) {
    let [xx, xy, yy] = [0, 0, 0];
    for (const members of kinds.values()) {
      const value = (row: number) => raw.values[row * features + i]!;
      const xMean = meanAt(members, (row) => raw.rise[row]! - usualRise);
      const yMean = meanAt(members, value);
      for (const row of members) {
        const x = raw.rise[row]! - usualRise - xMean;
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
