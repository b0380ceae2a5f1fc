import type { CheckState } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";

export type InterruptedAction = "useGathered" | "goOn" | "restart" | "reconnect";

export interface InterruptedView {
  readonly phase: "interrupted";
  readonly title: string;
  readonly what: string;
  readonly remedy: string;
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
  { snifferLost }: { readonly snifferLost: boolean },
  words: Words<"check">,
): InterruptedView {
  const { interrupted, steps } = words.text.check;
  const cause = interrupted.causes[state.cause];
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
    note: canGoOn ? interrupted.goOnText : null,
    actions: actionsOf(state.usable, canGoOn, snifferLost, words),
  };
}

/** A lost sniffer must be back before anything can start again; the first action is the main one. */
function actionsOf(
  usable: boolean,
  canGoOn: boolean,
  snifferLost: boolean,
  { text }: Words<"check">,
): InterruptedView["actions"] {
  const { interrupted } = text.check;
  const offered: { id: InterruptedAction; label: string }[] = [];
  if (snifferLost) offered.push({ id: "reconnect", label: interrupted.reconnect });
  else offered.push({ id: "restart", label: interrupted.restart });
  if (usable) offered.push({ id: "useGathered", label: interrupted.useGathered });
  if (canGoOn) offered.push({ id: "goOn", label: interrupted.goOn });
  return offered.map((action, i) => ({ ...action, main: i === 0 }));
}
