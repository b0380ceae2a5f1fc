/**
 * One exact step of first-order approach to a constant goal, with its own time constant each way:
 * `y(t) = goal + (y0 - goal) * exp(-t / tau)`; after `tau * ln 2` half the gap is closed.
 *
 * @param value - where it is
 * @param goal - where it is drawn to, constant over the step
 * @param riseMs - time constant while the goal lies above, > 0
 * @param fallMs - time constant while the goal lies below, > 0
 * @param stepMs - length of the step, >= 0
 * @throws {RangeError} if a time constant is not positive or the step is negative
 * @see Clifford and Tuma, Sensors and Actuators 3 (1983), 255-281, on the transient answer
 */
export function relax(value: number, goal: number, riseMs: number, fallMs: number, stepMs: number): number {
  const tauMs = goal > value ? riseMs : fallMs;
  if (!(tauMs > 0)) throw new RangeError(`time constant: ${tauMs}`);
  if (!(stepMs >= 0)) throw new RangeError(`step: ${stepMs}`);
  return goal + (value - goal) * Math.exp(-stepMs / tauMs);
}
