/** The way back to clean air after a plate, as a pure function from state and event to the next state and effects. */
import { recovery, type Recovery } from "../sniff/recovery.js";
import type { SniffPhase } from "../sniff/sniff.js";
import type { SnifferStatus } from "../profile/status.js";
import type { TimedSweep } from "./checkState.js";
import { phaseOf } from "./gathered.js";

/** Sweeps of the release that are kept: longer than the window that its decay is fitted to. */
export const RELEASE_KEPT_MS = 60_000;
/** So long away without an end in sight, and the person is asked to move. Common practice. */
export const STUCK_MS = 45_000;
/** Longer than this nobody waits, and the heater costs charge. Common practice. */
export const RELEASE_LIMIT_MS = 300_000;

export type ReleaseState =
  /** Nothing is followed: no plate was sniffed, it had no clean air, or the sniffer went. */
  | { readonly kind: "off" }
  /** The sniffer drives off what its films hold and sends nothing meanwhile (PROFILE.md 5). */
  | { readonly kind: "purging"; readonly cleanAir: SniffPhase; readonly isHeard: boolean }
  | {
      readonly kind: "following";
      readonly cleanAir: SniffPhase;
      readonly sweeps: readonly TimedSweep[];
      readonly now: Recovery;
      /** Device time of the first sweep; null before it. */
      readonly sinceMs: number | null;
      /** Device time since when no end can be told; null where one can. */
      readonly stuckSinceMs: number | null;
    }
  | { readonly kind: "back" }
  /** Followed to the limit, and never back. */
  | { readonly kind: "gaveUp" };

export type ReleaseEvent =
  /** A plate was sniffed and the sniffer is told to purge; `cleanAir` is that check's own. */
  | { readonly kind: "purge"; readonly cleanAir: SniffPhase | undefined }
  /** The sniffer does not purge: its release is followed as it is. */
  | { readonly kind: "noPurge" }
  | { readonly kind: "status"; readonly state: SnifferStatus["state"] }
  | { readonly kind: "sweep"; readonly sweep: TimedSweep }
  /** The link, the sniffer or the person's next check ends the following. */
  | { readonly kind: "end" };

export interface ReleaseStep {
  readonly state: ReleaseState;
  readonly effect: "startSweeps" | "stopSweeps" | null;
}

export const NOT_FOLLOWING: ReleaseState = { kind: "off" };

const step = (state: ReleaseState, effect: ReleaseStep["effect"] = null): ReleaseStep => ({ state, effect });

/**
 * The next state. Events that do not belong to a state change nothing; a finding is no part of it.
 *
 * @param event - what happened; times in it are the sniffer's own clock
 */
export function releaseFlow(state: ReleaseState, event: ReleaseEvent): ReleaseStep {
  switch (event.kind) {
    case "purge": {
      const { cleanAir } = event;
      if (cleanAir === undefined || cleanAir.ohm.length === 0) return step(NOT_FOLLOWING);
      return step({ kind: "purging", cleanAir, isHeard: false });
    }
    case "noPurge":
      return state.kind === "purging" ? follow(state.cleanAir) : step(state);
    case "status":
      return heard(state, event.state);
    case "sweep":
      return state.kind === "following" ? swept(state, event.sweep) : step(state);
    case "end":
      return step(NOT_FOLLOWING);
  }
}

/** Is the sniffer known, or thought, not to be back in clean air? */
export const isClearing = ({ kind }: ReleaseState): boolean =>
  kind === "purging" || kind === "following" || kind === "gaveUp";

/** Has it been away so long, with no end in sight, that waiting there will not do? */
export function isStuck(state: ReleaseState): boolean {
  if (state.kind !== "following" || state.stuckSinceMs === null) return state.kind === "gaveUp";
  return (state.sweeps.at(-1)?.atMs ?? 0) - state.stuckSinceMs >= STUCK_MS;
}

function follow(cleanAir: SniffPhase): ReleaseStep {
  const now = recovery(cleanAir, phaseOf([]));
  return step(
    { kind: "following", cleanAir, sweeps: [], now, sinceMs: null, stuckSinceMs: null },
    "startSweeps",
  );
}

/** "Ready" means the end of the purge only after the purge was heard of: the stop before it is told as well. */
function heard(state: ReleaseState, told: SnifferStatus["state"]): ReleaseStep {
  if (state.kind === "purging") {
    if (told === "purging") return step({ ...state, isHeard: true });
    return told === "ready" && state.isHeard ? follow(state.cleanAir) : step(state);
  }
  // Somebody else stopped the run: nothing more is known.
  const isCutOff = state.kind === "following" && state.sinceMs !== null && told !== "measuring";
  return step(isCutOff ? NOT_FOLLOWING : state);
}

function swept(state: Extract<ReleaseState, { kind: "following" }>, sweep: TimedSweep): ReleaseStep {
  const { atMs } = sweep;
  const kept = state.sweeps.filter((earlier) => earlier.atMs >= atMs - RELEASE_KEPT_MS);
  const sweeps = [...kept, sweep];
  const now = recovery(state.cleanAir, phaseOf(sweeps));
  if (now.kind === "back") return step({ kind: "back" }, "stopSweeps");
  const sinceMs = state.sinceMs ?? atMs;
  if (atMs - sinceMs >= RELEASE_LIMIT_MS) return step({ kind: "gaveUp" }, "stopSweeps");
  const stuckSinceMs = now.kind === "notTelling" ? (state.stuckSinceMs ?? atMs) : null;
  return step({ ...state, sweeps, now, sinceMs, stuckSinceMs });
}
