/** The way back to clean air after a plate, as a pure function from state and event to the next state and effects. */
import { recovery } from "../sniff/recovery.js";
import type { SniffPhase } from "../sniff/sniff.js";
import type { SnifferStatus } from "../profile/status.js";
import type { TimedSweep } from "./checkState.js";
import { phaseOf } from "./gathered.js";
import { NOT_FOLLOWING, RELEASE_LIMIT_MS, type ReleaseState } from "./releaseState.js";

/** Sweeps of the release that are kept: longer than the window that its decay is fitted to. */
export const RELEASE_KEPT_MS = 60_000;

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
