import type { CheckState } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { reconnectView, type Reconnecting } from "./reconnectView.js";

export type InterruptedAction = "useGathered" | "goOn" | "restart" | "reconnect" | "giveUp";

export interface InterruptedView {
  readonly phase: "interrupted";
  readonly title: string;
  readonly what: string;
  readonly remedy: string;
  /** The countdown to the next try to get the sniffer back; it is not read out. */
  readonly countdown: string | null;
  readonly during: string;
  /** What was kept, or that nothing was lost. */
  readonly kept: string;
  readonly note: string | null;
  readonly actions: readonly {
    readonly id: InterruptedAction;
    readonly label: string;
    readonly main: boolean;
  }[];
}

/** What happened, what is kept, what to do. */
export function interruptedView(
  state: Extract<CheckState, { phase: "interrupted" }>,
  context: InterruptedContext,
  words: Words<"common" | "check" | "sniffer">,
): InterruptedView {
  const { interrupted, steps } = words.text.check;
  const cause =
    state.refused === null
      ? interrupted.causes[state.cause]
      : { ...interrupted.back, what: interrupted.refused[state.refused] };
  const canGoOn = state.cause === "neverSteady";
  return {
    phase: "interrupted",
    title: cause.title,
    what: cause.what,
    remedy: cause.remedy,
    during: interrupted.during(steps[state.during === "headspace" ? "overPlate" : state.during]),
    kept: state.usable
      ? interrupted.kept(numberText(state.gathered.headspace.length, words.formats))
      : interrupted.nothingKept,
    countdown: context.snifferLost ? reconnectView(context.reconnecting, words).text : null,
    note: canGoOn ? interrupted.goOnText : null,
    actions: actionsOf(state.usable, canGoOn, context, words),
  };
}

export interface InterruptedContext {
  readonly snifferLost: boolean;
  readonly reconnecting: Reconnecting;
}

/** A lost sniffer must be back before anything can start again; the first action is the main one. */
function actionsOf(
  usable: boolean,
  canGoOn: boolean,
  { snifferLost, reconnecting }: InterruptedContext,
  words: Words<"common" | "check" | "sniffer">,
): InterruptedView["actions"] {
  const { interrupted } = words.text.check;
  const again = reconnectView(reconnecting, words);
  const offered: { id: InterruptedAction; label: string }[] = [];
  if (snifferLost) offered.push({ id: "reconnect", label: again.tryNow });
  else offered.push({ id: "restart", label: interrupted.restart });
  if (usable) offered.push({ id: "useGathered", label: interrupted.useGathered });
  if (canGoOn) offered.push({ id: "goOn", label: interrupted.goOn });
  if (snifferLost && again.giveUp !== null) offered.push({ id: "giveUp", label: again.giveUp });
  return offered.map((action, i) => ({ ...action, main: i === 0 }));
}
