import { median } from "../stats/summary.js";
import type { SniffPhase } from "../sniff/sniff.js";

/** What clean air looked like, channel by channel. */
export interface CleanAirReference {
  /** Natural log of the resistance in ohm, shape [channels]: the median of the later half of the sweeps. */
  readonly logOhm: Float64Array;
  /** Standard deviation of the log resistance from sweep to sweep, shape [channels]; null with under 3 sweeps. */
  readonly noise: Float64Array | null;
}

/** Fewest clean-air sweeps from which noise can be told from trend: two differences. Common practice. */
const NOISE_SWEEPS = 3;
/** Smallest noise that is believed, in log units: a 16-bit reading resolves about 1 part in 65 536. */
const LEAST_NOISE = 1 / 65536;

/**
 * Reference and noise floor of the clean-air phase.
 *
 * The noise is taken from differences of successive sweeps, so that a slow trend does not count as noise.
 *
 * @param phase - at least one sweep
 * @see von Neumann, Ann. Math. Stat. 12 (1941), 367-395: mean square successive difference
 */
export function cleanAirReference(phase: SniffPhase): CleanAirReference {
  const channels = phase.ohm[0]?.length ?? 0;
  if (channels === 0) throw new RangeError("clean air needs a sweep");
  const later = phase.ohm.slice(Math.floor(phase.ohm.length / 2));
  const logOhm = Float64Array.from({ length: channels }, (_, channel) =>
    median(later.map((sweep) => Math.log(sweep[channel]!))),
  );
  const noise =
    phase.ohm.length < NOISE_SWEEPS
      ? null
      : Float64Array.from({ length: channels }, (_, channel) => successiveNoise(phase, channel));
  return { logOhm, noise };
}

function successiveNoise(phase: SniffPhase, channel: number): number {
  let sum = 0;
  for (let i = 1; i < phase.ohm.length; i += 1)
    sum += Math.log(phase.ohm[i]![channel]! / phase.ohm[i - 1]![channel]!) ** 2;
  return Math.max(LEAST_NOISE, Math.sqrt(sum / (2 * (phase.ohm.length - 1))));
}
