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
  const z = new Float64Array(values.length);
  for (let i = 0; i < z.length; i += 1) {
    const own = (values[i]! - map.humiditySlope[i]! * excess - map.centre[i]!) / map.scale[i]!;
    z[i] = Math.max(-FARTHEST, Math.min(FARTHEST, own));
  }
  return z;
}

/** How much of the humidity's part the nose takes out of its features, 0 to 1. */
export function humidityShareOf({ report, horizons }: Nose): number {
  if (report.humidityShare !== undefined) return report.humidityShare;
  return horizons.some(({ input }) => input.humiditySlope.some((slope) => slope !== 0)) ? 1 : 0;
}
