import { MOST_TRIES, type ReconnectState } from "../flows/reconnectState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { durationText } from "./durationText.js";

/** How the app gets a lost sniffer back by itself. */
export interface Reconnecting {
  readonly state: ReconnectState;
  /** Until the next try; null where none is due. */
  readonly secondsLeft: number | null;
}

/** Nothing is lost. */
export const NOT_RECONNECTING: Reconnecting = { state: { kind: "off" }, secondsLeft: null };

export interface ReconnectView {
  /** What is being done about it, or why nothing is. */
  readonly text: string | null;
  readonly tryNow: string;
  /** null where nothing is under way that could be ended. */
  readonly giveUp: string | null;
}

/** The countdown in words, and what can be tapped. */
export function reconnectView(
  { state, secondsLeft }: Reconnecting,
  words: Words<"common" | "sniffer">,
): ReconnectView {
  const { reconnecting: text, reconnect } = words.text.sniffer;
  const going = state.kind === "waiting" || state.kind === "trying" || state.kind === "paused";
  return {
    text: textOf({ state, secondsLeft }, words),
    tryNow: going ? text.tryNow : reconnect,
    giveUp: going ? text.giveUp : null,
  };
}

function textOf({ state, secondsLeft }: Reconnecting, words: Words<"common" | "sniffer">): string | null {
  const { reconnecting: text } = words.text.sniffer;
  switch (state.kind) {
    case "off":
      return null;
    case "waiting":
      return text.waiting(durationText((secondsLeft ?? 0) * 1000, words));
    case "trying":
      return text.trying(numberText(state.tries, words.formats), numberText(MOST_TRIES, words.formats));
    case "paused":
      return text.paused[state.cause];
    case "gaveUp":
      return text.gaveUp[state.why];
  }
}
