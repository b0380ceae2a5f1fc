import type { AirReading } from "../kernel/air.js";
import type { RecordedFlag, Sniff, SniffPhase } from "../sniff/sniff.js";
import type { CheckSubject, Gathered, TimedSweep } from "./checkState.js";

/** Clean air kept for the baseline; older sweeps are let go so that a long wait does not blur it. */
export const CLEAN_AIR_KEPT_MS = 40_000;

/** Largest share of lost sweeps that leaves a sniff usable without a flag (common practice). */
export const MOST_LOST_SHARE = 0.2;

export function nothingGathered(subject: CheckSubject): Gathered {
  return {
    subject,
    cleanAir: [],
    headspace: [],
    cleanAirReading: {},
    headspaceReading: {},
    flags: [],
    sweepsLost: 0,
  };
}

/** Adds a clean-air sweep and drops those older than `CLEAN_AIR_KEPT_MS`. */
export function withCleanAir(gathered: Gathered, sweep: TimedSweep): Gathered {
  const kept = gathered.cleanAir.filter((earlier) => earlier.atMs >= sweep.atMs - CLEAN_AIR_KEPT_MS);
  return { ...gathered, cleanAir: [...kept, sweep] };
}

export function withHeadspace(gathered: Gathered, sweep: TimedSweep): Gathered {
  return { ...gathered, headspace: [...gathered.headspace, sweep] };
}

/** Keeps the newest value of each quantity. */
export function withAir(
  gathered: Gathered,
  phase: "cleanAirReading" | "headspaceReading",
  reading: AirReading,
): Gathered {
  return { ...gathered, [phase]: { ...gathered[phase], ...reading } };
}

export function withFlag(gathered: Gathered, flag: RecordedFlag): Gathered {
  return gathered.flags.includes(flag) ? gathered : { ...gathered, flags: [...gathered.flags, flag] };
}

export function withLoss(gathered: Gathered, count: number): Gathered {
  return { ...gathered, sweepsLost: gathered.sweepsLost + count };
}

/** A sniff with a hole in it may have missed the part that mattered; the odd lost sweep does no harm. */
function flagsOf({ flags, sweepsLost, cleanAir, headspace }: Gathered): readonly RecordedFlag[] {
  const share = sweepsLost / Math.max(1, sweepsLost + cleanAir.length + headspace.length);
  return share > MOST_LOST_SHARE && !flags.includes("sweepsLost") ? [...flags, "sweepsLost"] : flags;
}

export function phaseOf(sweeps: readonly TimedSweep[]): SniffPhase {
  const start = sweeps[0]?.atMs ?? 0;
  return { atMs: sweeps.map((sweep) => sweep.atMs - start), ohm: sweeps.map((sweep) => sweep.ohm) };
}

/** The sniff as gathered so far; null before the first headspace sweep, for then there is nothing to judge. */
export function sniffFrom(gathered: Gathered): Sniff | null {
  const { subject, cleanAir, headspace } = gathered;
  const flags = flagsOf(gathered);
  const firstOver = headspace[0];
  if (firstOver === undefined) return null;
  // Clean air whose age no clock tells is none: an age of 0 would call it fresh.
  const cleanAirAgeMs = firstOver.atMs - (cleanAir.at(-1)?.atMs ?? Number.NaN);
  return {
    format: "nidor-sniff/1",
    id: subject.sniffId,
    takenAt: subject.takenAt,
    sniffer: { id: subject.snifferId, channels: subject.channels },
    plate: subject.plate,
    occasion: subject.occasion,
    dish: subject.dish,
    groups: {},
    headspace: phaseOf(headspace),
    air: { cleanAir: gathered.cleanAirReading, headspace: gathered.headspaceReading },
    ...(cleanAirAgeMs >= 0 ? { cleanAir: phaseOf(cleanAir), cleanAirAgeMs } : {}),
    ...(flags.length === 0 ? {} : { flags }),
  };
}
