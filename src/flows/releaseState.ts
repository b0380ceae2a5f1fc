/** How far the way back to clean air has come, for the flow that follows it and for those who tell it. */
import type { Recovery } from "../sniff/recovery.js";
import type { SniffPhase } from "../sniff/sniff.js";
import type { TimedSweep } from "./checkState.js";

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

export const NOT_FOLLOWING: ReleaseState = { kind: "off" };

/** Is the sniffer known, or thought, not to be back in clean air? */
export const isClearing = ({ kind }: ReleaseState): boolean =>
  kind === "purging" || kind === "following" || kind === "gaveUp";

/** Has it been away so long, with no end in sight, that waiting there will not do? */
export function isStuck(state: ReleaseState): boolean {
  if (state.kind !== "following" || state.stuckSinceMs === null) return state.kind === "gaveUp";
  return (state.sweeps.at(-1)?.atMs ?? 0) - state.stuckSinceMs >= STUCK_MS;
}
