import type { SniffPhase } from "../sniff/sniff.js";

/** The headspace phase is described by the means of this many equal stretches of time. */
export const QUARTERS = 4;

/**
 * Mean log resistance in each quarter of the time a phase lasted, so that any number of sweeps gives the same shape.
 *
 * A quarter in which no sweep fell takes the line between the sweeps on either side of its middle.
 *
 * @returns natural log of ohm, shape [QUARTERS, channels], row-major
 * @throws {RangeError} if there is no sweep
 */
export function quarterLevels(phase: SniffPhase): Float64Array {
  const channels = phase.ohm[0]?.length ?? 0;
  if (channels === 0) throw new RangeError("a phase needs a sweep");
  const first = phase.atMs[0]!;
  const lengthMs = phase.atMs.at(-1)! - first;
  const levels = new Float64Array(QUARTERS * channels);
  const counts = new Float64Array(QUARTERS);
  phase.ohm.forEach((sweep, i) => {
    const share = lengthMs > 0 ? (phase.atMs[i]! - first) / lengthMs : 1;
    const quarter = Math.min(QUARTERS - 1, Math.floor(share * QUARTERS));
    counts[quarter]! += 1;
    sweep.forEach((ohm, channel) => (levels[quarter * channels + channel]! += Math.log(ohm)));
  });
  for (let quarter = 0; quarter < QUARTERS; quarter += 1) {
    const middleMs = first + ((quarter + 0.5) / QUARTERS) * lengthMs;
    for (let channel = 0; channel < channels; channel += 1) {
      const at = quarter * channels + channel;
      levels[at] = counts[quarter]! > 0 ? levels[at]! / counts[quarter]! : between(phase, channel, middleMs);
    }
  }
  return levels;
}

function between(phase: SniffPhase, channel: number, atMs: number): number {
  const after = phase.atMs.findIndex((time) => time >= atMs);
  const right = after < 0 ? phase.atMs.length - 1 : after;
  const left = Math.max(0, right - 1);
  const span = phase.atMs[right]! - phase.atMs[left]!;
  const share = span > 0 ? (atMs - phase.atMs[left]!) / span : 1;
  const low = Math.log(phase.ohm[left]![channel]!);
  return low + share * (Math.log(phase.ohm[right]![channel]!) - low);
}
