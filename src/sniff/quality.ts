import { leastSquaresSlope } from "../stats/summary.js";
import { airFault } from "./airSensor.js";
import { RECORDED_FLAGS, type RecordedFlag, type Sniff, type SniffPhase } from "./sniff.js";
import { STALE_CLEAN_AIR_MS } from "./staleCleanAir.js";

/** What is wrong with a sniff, whatever the nose. */
export type SniffFault =
  | { readonly kind: RecordedFlag }
  | { readonly kind: "tooFewSweeps"; readonly sweeps: number; readonly needed: number }
  | { readonly kind: "staleCleanAir"; readonly ageMs: number }
  | { readonly kind: "wetSensor" | "airStuck" }
  | { readonly kind: "saturated"; readonly channels: number };

/** Readings outside this range are the ends of what a divider with a 16-bit converter resolves. Common practice. */
export const LEAST_OHM = 1;
export const LARGEST_OHM = 1e9;
/** A channel that gives one and the same value this many times running, in both phases, is stuck. Common practice. */
export const STUCK_SWEEPS = 5;
/** Clean air that moves more than this from its first to its last sweep is not steady, log units (2 %/min at 30 s). */
export const UNSTEADY_DRIFT_PER_MINUTE = 0.2;
/** Fewest clean-air sweeps and time in which a trend can be told from noise. Common practice. */
const TREND_SWEEPS = 5;
const TREND_MS = 8_000;

/**
 * All faults that the sniff's own numbers and flags show, each kind once.
 *
 * @param neededSweeps - fewest headspace sweeps that are wanted, whole, >= 1
 */
export function sniffFaults(sniff: Sniff, neededSweeps: number): SniffFault[] {
  const faults: SniffFault[] = RECORDED_FLAGS.filter((flag) => sniff.flags?.includes(flag)).map((kind) => ({
    kind,
  }));
  const sweeps = sniff.headspace.ohm.length;
  if (sweeps < neededSweeps) faults.push({ kind: "tooFewSweeps", sweeps, needed: neededSweeps });
  if (sniff.cleanAirAgeMs !== undefined && sniff.cleanAirAgeMs > STALE_CLEAN_AIR_MS)
    faults.push({ kind: "staleCleanAir", ageMs: sniff.cleanAirAgeMs });
  const air = airFault(sniff.air?.cleanAir, sniff.air?.headspace);
  if (air !== null) faults.push({ kind: air });
  const channels = saturatedChannels(sniff);
  if (channels > 0) faults.push({ kind: "saturated", channels });
  const unsteady = sniff.cleanAir !== undefined && drifts(sniff.cleanAir);
  if (unsteady && !faults.some(({ kind }) => kind === "cleanAirUnsteady"))
    faults.push({ kind: "cleanAirUnsteady" });
  return faults;
}

function saturatedChannels(sniff: Sniff): number {
  return sniff.sniffer.channels.filter((_, channel) => {
    const over = sniff.headspace.ohm.map((sweep) => sweep[channel] ?? 0);
    const before = sniff.cleanAir?.ohm.map((sweep) => sweep[channel] ?? 0) ?? [];
    if (over.some((ohm) => ohm < LEAST_OHM || ohm > LARGEST_OHM)) return true;
    const all = [...before, ...over];
    return before.length >= STUCK_SWEEPS && over.length >= STUCK_SWEEPS && all.every((ohm) => ohm === all[0]);
  }).length;
}

/** Does the middle channel run away? The median over channels keeps one odd channel from deciding. */
function drifts(phase: SniffPhase): boolean {
  const lengthMs = (phase.atMs.at(-1) ?? 0) - (phase.atMs[0] ?? 0);
  if (phase.ohm.length < TREND_SWEEPS || lengthMs < TREND_MS) return false;
  const half = Math.floor(phase.ohm.length / 2);
  const times = phase.atMs.slice(half);
  const slopes = (phase.ohm[0] ?? [])
    .map((_, channel) =>
      Math.abs(
        leastSquaresSlope(
          times,
          phase.ohm.slice(half).map((sweep) => Math.log(sweep[channel] ?? 1)),
        ),
      ),
    )
    .sort((a, b) => a - b);
  const middle = slopes[Math.floor((slopes.length - 1) / 2)] ?? 0;
  return middle * 60_000 > UNSTEADY_DRIFT_PER_MINUTE;
}
