/** A running check, phase by phase. A finished one is told by `findingView`. */
import type { CheckState } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { cleanAirView, type CleanAirView } from "./cleanAirView.js";
import { durationText } from "./durationText.js";
import { headspaceView, type HeadspaceView } from "./headspaceView.js";
import { interruptedView, type InterruptedContext, type InterruptedView } from "./interruptedView.js";
import { stepsView, type StepsView } from "./stepsView.js";

export interface WarmingView {
  readonly phase: "warming";
  readonly title: string;
  readonly text: string;
  readonly left: string;
  readonly progressLabel: string;
  /** Share of the warm-up that is over, 0 to 1. */
  readonly progress: number;
}

/** How to hold the sniffer: a drawing, and the same in words. */
export interface GuideView {
  readonly pose: "cleanAir" | "overPlate";
  readonly lines: readonly string[];
}

export interface OverPlateView {
  readonly phase: "overPlate";
  readonly title: string;
  readonly text: string;
  readonly guide: GuideView;
  readonly note: string;
  /** Seconds until the sniff begins, large on screen; null before the tap. */
  readonly countdown: string | null;
  readonly steam: string | null;
  readonly button: string;
}

/** One screen of a running check. */
export interface CheckView {
  readonly dish: string;
  readonly steps: StepsView;
  readonly stop: string;
  /** The next tap, shown from the start where it will be. */
  readonly overPlate: string;
  readonly practice: string | null;
  readonly body: WarmingView | CleanAirView | OverPlateView | HeadspaceView | InterruptedView;
}

export interface CheckContext extends InterruptedContext {
  readonly practice: boolean;
  /** Is it a reading of the check jar, and no plate? */
  readonly isJar: boolean;
  /** How many times faster than real the virtual sniffer's time runs. */
  readonly practiceSpeed: number;
  readonly hasAllergy: boolean;
  readonly acceptedMissRate: number;
  /** Time over the plate that this check is likely to take; null where it cannot be told. */
  readonly likelyMs: number | null;
  /** Seconds until the sniff over the plate begins; null where no count-down runs. */
  readonly countdown: number | null;
}

export type CheckWords = Words<"common" | "check" | "sniffer" | "finding">;

/** Words of a running check; null where none runs. */
export function checkView(state: CheckState, context: CheckContext, words: CheckWords): CheckView | null {
  if (state.phase === "idle" || state.phase === "done") return null;
  const { check, sniffer } = words.text;
  return {
    dish: context.isJar ? check.jar.name : state.gathered.subject.dish,
    steps: stepsView(state.phase === "interrupted" ? state.during : state.phase, words),
    stop: check.stop,
    overPlate: check.overPlate.button,
    practice: context.practice ? sniffer.practice(String(context.practiceSpeed)) : null,
    body: bodyOf(state, context, words),
  };
}

function bodyOf(
  state: Exclude<CheckState, { phase: "idle" | "done" }>,
  context: CheckContext,
  words: CheckWords,
): CheckView["body"] {
  switch (state.phase) {
    case "warming":
      return warmingView(state, words);
    case "cleanAir":
      return cleanAirView(state, words);
    case "overPlate":
      return overPlateView(context, words);
    case "headspace":
      return headspaceView(state, context, words);
    case "interrupted":
      return interruptedView(state, context, words);
  }
}

function warmingView(state: Extract<CheckState, { phase: "warming" }>, words: CheckWords): WarmingView {
  const { warming } = words.text.check;
  return {
    phase: "warming",
    title: warming.title,
    text: warming.text,
    left: warming.left(durationText(state.warmUpLeftMs, words)),
    progressLabel: warming.progress,
    progress: state.warmUpMs === 0 ? 1 : 1 - state.warmUpLeftMs / state.warmUpMs,
  };
}

function overPlateView(
  { practice, isJar, hasAllergy, countdown }: CheckContext,
  words: CheckWords,
): OverPlateView {
  const { check, finding } = words.text;
  const overPlate = isJar ? { ...check.overPlate, ...jarOnly(words) } : check.overPlate;
  return {
    phase: "overPlate",
    title: overPlate.title,
    text: countdown === null ? overPlate.text : overPlate.moving,
    guide: { pose: "overPlate", lines: [overPlate.distance, overPlate.cover, overPlate.still] },
    countdown: countdown === null ? null : numberText(countdown, words.formats),
    note: practice ? overPlate.practice : overPlate.again,
    steam: hasAllergy ? finding.steam : null,
    button: countdown === null ? overPlate.button : overPlate.startNow,
  };
}

function jarOnly({ text }: CheckWords) {
  const { text: start, moving, practice } = text.check.jar;
  return { text: start, moving, practice };
}
