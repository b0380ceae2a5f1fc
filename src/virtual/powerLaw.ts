/**
 * Resistance of an n-type metal oxide in a reducing gas mixture:
 * `R = R0 * (1 + sum_i K_i * C_i)^(-beta)`. Far above 1/K it is a straight line of slope -beta in log-log.
 *
 * @param cleanOhm - resistance in clean air, > 0
 * @param stimulus - sum of K_i * C_i, dimensionless, >= 0
 * @param beta - exponent, commonly 0.2 to 0.8
 * @throws {RangeError} if an argument is out of range or not finite
 * @see Clifford and Tuma, Sensors and Actuators 3 (1983), 233-254
 */
export function powerLaw(cleanOhm: number, stimulus: number, beta: number): number {
  if (!(cleanOhm > 0 && Number.isFinite(cleanOhm))) throw new RangeError(`clean resistance: ${cleanOhm}`);
  if (!(stimulus >= 0 && Number.isFinite(stimulus))) throw new RangeError(`stimulus: ${stimulus}`);
  if (!(beta > 0 && beta <= 1)) throw new RangeError(`beta: ${beta}`);
  return cleanOhm * (1 + stimulus) ** -beta;
}
