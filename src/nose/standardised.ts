import type { InputMap, Nose } from "./nose.js";

/** Features beyond this many standard deviations are drawn in: one broken channel must not decide. Common practice. */
const FARTHEST = 8;

/**
 * Raw features to standardised ones, with the share of the humidity taken out.
 *
 * @param rise - humidity rise of the sniff, or null where unknown
 */
export function standardised(map: InputMap, values: Float64Array, rise: number | null): Float64Array {
  const excess = (rise ?? map.usualRise) - map.usualRise;
  return values.map((value, i) => {
    const z = (value - map.humiditySlope[i]! * excess - map.centre[i]!) / map.scale[i]!;
    return Math.max(-FARTHEST, Math.min(FARTHEST, z));
  });
}

/** Whether the nose takes the share of the humidity out of its features. */
export function correctsHumidity(nose: Nose): boolean {
  return nose.horizons.some(({ input }) => input.humiditySlope.some((slope) => slope !== 0));
}
