/** Getting a lost sniffer back by itself, as a pure function from state and event to the next state and effects. */
import type { RandomSource } from "../kernel/random.js";
import { MOST_TRIES, type PauseCause, type ReconnectState } from "./reconnectState.js";

/** The first try comes at once: most losses are a hand in between. */
export const FIRST_WAIT_MS = 500;
/** No wait is longer than this. */
export const LONGEST_WAIT_MS = 16_000;
/** A try that brings neither a link nor a refusal in this time is given up. Common practice: connecting takes seconds. */
export const TRY_LIMIT_MS = 12_000;

export type ReconnectEvent =
  | { readonly kind: "lost" }
  /** `mendable`: out of reach, as against a refusal that no second try changes. */
  | { readonly kind: "failed"; readonly mendable: boolean }
  | { readonly kind: "due" } // the wait is over
  | { readonly kind: "hindered"; readonly cause: PauseCause }
  | { readonly kind: "unhindered" }
  | { readonly kind: "tryNow" }
  | { readonly kind: "giveUp" }
  | { readonly kind: "back" }
  | { readonly kind: "over" }; // the person disconnected or chose another

export interface ReconnectStep {
  readonly state: ReconnectState;
  /** Whether to connect now, to break off what is under way, or neither. */
  readonly effect: "connect" | "breakOff" | null;
}

/**
 * How long to wait before the next try: doubled each time, up to a bound, the upper half of it left to chance.
 *
 * @param failed - tries that failed so far, whole, >= 0
 * @returns milliseconds, from half of the doubled wait to all of it
 * @throws {RangeError} if `failed` is not whole or is negative
 * @see Metcalfe and Boggs, Comm. ACM 19 (1976), 395-404: doubling at random keeps two phones from colliding for ever
 */
export function waitBeforeTry(failed: number, random: RandomSource): number {
  if (!(Number.isInteger(failed) && failed >= 0)) throw new RangeError(`failed tries: ${failed}`);
  const whole = Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** failed);
  return whole / 2 + (whole / 2) * random();
}

const stay = (state: ReconnectState): ReconnectStep => ({ state, effect: null });

/** Events that do not belong to a state change nothing. `nowMs` is any clock that only goes forward. */
export function reconnectFlow(
  state: ReconnectState,
  event: ReconnectEvent,
  nowMs: number,
  random: RandomSource,
): ReconnectStep {
  const waiting = (tries: number): ReconnectStep =>
    stay({ kind: "waiting", tries, dueAtMs: nowMs + waitBeforeTry(tries, random) });
  switch (event.kind) {
    case "lost":
      return state.kind === "off" ? waiting(0) : stay(state);
    case "due":
      return state.kind === "waiting" ? connect(state.tries) : stay(state);
    case "failed":
      if (state.kind !== "trying") return stay(state);
      if (!event.mendable) return stay({ kind: "gaveUp", why: "willNotMend" });
      return state.tries >= MOST_TRIES ? stay({ kind: "gaveUp", why: "bound" }) : waiting(state.tries);
    case "hindered":
      if (state.kind !== "waiting" && state.kind !== "trying") return stay(state);
      return breakOff(state, { kind: "paused", cause: event.cause });
    case "unhindered":
      return state.kind === "paused" ? connect(0) : stay(state);
    case "tryNow":
      return tryNow(state);
    case "giveUp":
      if (state.kind === "off" || state.kind === "gaveUp") return stay(state);
      return breakOff(state, { kind: "gaveUp", why: "person" });
    case "back":
      return stay({ kind: "off" });
    case "over":
      return breakOff(state, { kind: "off" });
  }
}

/** A tap begins the count anew: the person has done something about it. */
function tryNow(state: ReconnectState): ReconnectStep {
  return state.kind === "trying" || state.kind === "off" ? stay(state) : connect(0);
}

const connect = (tries: number): ReconnectStep => ({
  state: { kind: "trying", tries: tries + 1 },
  effect: "connect",
});

const breakOff = (before: ReconnectState, state: ReconnectState): ReconnectStep => ({
  state,
  effect: before.kind === "trying" ? "breakOff" : null,
});
