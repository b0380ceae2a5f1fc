/**
 * The resistance of a sensor in series with a known resistor, from the voltage at their joint.
 * Ohm's law: one current flows through both, so the voltages stand as the resistances.
 *
 * @param jointMillivolt - from the joint to ground
 * @param supplyMillivolt - across both
 * @param loadOhm - the known resistor
 * @param atSupply - which of the two sits at the supply; the other sits at ground
 * @returns in ohm; infinite or not positive where the voltages leave no resistance
 */
export function dividerOhm(
  jointMillivolt: number,
  supplyMillivolt: number,
  loadOhm: number,
  atSupply: "sensor" | "load",
): number {
  const upper = supplyMillivolt - jointMillivolt;
  return atSupply === "sensor" ? (loadOhm * upper) / jointMillivolt : (loadOhm * jointMillivolt) / upper;
}
