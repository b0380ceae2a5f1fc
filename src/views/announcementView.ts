import type { GroupFinding } from "../finding/finding.js";
import type { CheckState } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { groupsInHeading } from "./groupName.js";
import { type Tone, TONES_BY_WEIGHT, toneOf } from "./tone.js";

export interface AnnouncementContext {
  /** Is it a reading of the check jar? That has no finding of its own. */
  readonly isJar: boolean;
  /** Seconds that the count-down begins with. */
  readonly countDownS: number;
}

/**
 * What a screen reader says by itself of a check: a line for each phase, one for the whole count-down, and the whole
 * finding. The line stays the same for as long as there is nothing new, so that it is said once.
 *
 * @returns one line; empty where no check runs
 */
export function announcementView(
  state: CheckState,
  { isJar, countDownS }: AnnouncementContext,
  words: Words<"common" | "check" | "finding">,
): string {
  const { check } = words.text;
  const announce = isJar ? { ...check.announce, ...check.jar.announce } : check.announce;
  switch (state.phase) {
    case "idle":
      return "";
    case "overPlate":
      return state.countingDown
        ? announce.countdown(numberText(countDownS, words.formats))
        : announce.overPlate;
    case "done":
      return isJar ? announce.done : [announce.done, ...findingLines(state.finding.groups, words)].join(" ");
    default:
      return announce[state.phase];
  }
}

/** One sentence for each kind of finding, the loudest first. */
function findingLines(
  groups: readonly GroupFinding[],
  words: Words<"common" | "finding">,
): readonly string[] {
  const { finding } = words.text;
  const said = (tone: Tone) =>
    tone === "uncertain"
      ? `${finding.verdicts.uncertain}, ${finding.uncertainAddition}`
      : finding.verdicts[tone];
  if (groups.length === 0) return [`${finding.headline.none}.`];
  return TONES_BY_WEIGHT.flatMap((tone) => {
    const named = groups.filter(({ verdict }) => toneOf(verdict) === tone).map(({ group }) => group);
    return named.length === 0 ? [] : [`${finding.spoken(groupsInHeading(named, words), said(tone))}.`];
  });
}
