import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";

export const FIRST_RUN_STEPS = ["what", "cannot", "who", "start"] as const;
export type FirstRunStep = (typeof FIRST_RUN_STEPS)[number];
export type FirstRunAction = "next" | "skip" | "enterProfile" | "virtual" | "pair";

/** One page of the first run. */
export interface FirstRunView {
  readonly step: FirstRunStep;
  readonly count: string;
  readonly title: string;
  readonly text: string;
  readonly actions: readonly {
    readonly id: FirstRunAction;
    readonly label: string;
    readonly look: "main" | "plain" | "quiet";
  }[];
}

/** Words of one page of the first run. Pairing is offered only where the browser can. */
export function firstRunView(step: FirstRunStep, bluetooth: boolean, words: Words<"firstRun">): FirstRunView {
  const { firstRun: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const next = { id: "next", label: text.next, look: "main" } as const;
  const skip = { id: "skip", label: text.skip, look: "quiet" } as const;
  const actions: Record<FirstRunStep, FirstRunView["actions"]> = {
    what: [next, skip],
    cannot: [next, skip],
    who: [
      { id: "enterProfile", label: text.who.button, look: "main" },
      { id: "next", label: text.next, look: "quiet" },
    ],
    start: [
      { id: "virtual", label: text.start.button, look: "main" },
      ...(bluetooth ? [{ id: "pair", label: text.start.pair, look: "plain" } as const] : []),
      skip,
    ],
  };
  return {
    step,
    count: text.steps(whole(FIRST_RUN_STEPS.indexOf(step) + 1), whole(FIRST_RUN_STEPS.length)),
    title: text[step].title,
    text: text[step].text,
    actions: actions[step],
  };
}
