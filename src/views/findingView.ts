import type { GroupFinding, PlateFinding } from "../finding/finding.js";
import type { GroupTruths } from "../kernel/groups.js";
import type { Words } from "../text/catalogue.js";
import { type CautionsView, type CautionView, standingCautions } from "./cautionsView.js";
import { durationText } from "./durationText.js";
import { findingCardView, type FindingCardView } from "./findingCardView.js";
import { groupsInHeading, groupsInSentence } from "./groupName.js";
import { inOrderOfWeight, type Tone, TONES_BY_WEIGHT, toneOf } from "./tone.js";

/** What the practice kitchen really served, shown only after the finding. */
export interface RevealView {
  readonly title: string;
  readonly text: string;
  readonly lines: readonly string[];
}

/** All that a finished check says. */
export interface FindingView {
  readonly dish: string;
  readonly tone: Tone;
  readonly headline: string;
  readonly advice: string;
  readonly cards: readonly FindingCardView[];
  readonly steam: string | null;
  readonly cautions: CautionsView;
  readonly limits: string;
  readonly sniffed: string;
  readonly reveal: RevealView | null;
  readonly labels: {
    readonly save: string;
    readonly keep: string;
    readonly again: string;
    readonly done: string;
  };
}

export interface FindingSubject {
  readonly dish: string;
  readonly allergyGroups: readonly string[];
  readonly cautions: readonly CautionView[];
  /** Has the person said what they avoid? Without it no caution can stand, and the words say so. */
  readonly hasProfile: boolean;
  readonly nowMs: number;
  /** Of the practice plate; null for a real one. */
  readonly served: { readonly dishName: string; readonly groups: GroupTruths } | null;
}

/** The finding screen's words. The loudest finding leads: smelled, then uncertain, then not smelled. */
export function findingView(
  finding: PlateFinding,
  subject: FindingSubject,
  words: Words<"common" | "finding">,
): FindingView {
  const { finding: text } = words.text;
  const { acceptedMissRate, groups } = finding;
  const tone = leadingTone(groups);
  const context = { acceptedMissRate, allergyGroups: subject.allergyGroups, nowMs: subject.nowMs };
  return {
    dish: subject.dish,
    tone,
    headline: headline(groups, tone, words),
    advice: groups.length === 0 ? text.advice.none : text.advice[tone],
    cards: inOrderOfWeight(groups).map((group) => findingCardView(group, context, words)),
    steam: subject.allergyGroups.length > 0 ? text.steam : null,
    cautions: standingCautions(subject.cautions, subject.hasProfile, words),
    limits: text.limits,
    sniffed: text.basis.sniffed(durationText(finding.headspaceMs, words)),
    reveal: subject.served === null ? null : revealView(groups, subject.served, words),
    labels: { save: text.save, keep: text.keep, again: text.again, done: text.done },
  };
}

function leadingTone(groups: readonly GroupFinding[]): Tone {
  return (
    TONES_BY_WEIGHT.find((tone) => groups.some(({ verdict }) => toneOf(verdict) === tone)) ?? "uncertain"
  );
}

function headline(groups: readonly GroupFinding[], tone: Tone, words: Words<"common" | "finding">): string {
  const { headline: text } = words.text.finding;
  if (groups.length === 0) return text.none;
  if (tone === "uncertain") return text.uncertain;
  const named = groups.filter(({ verdict }) => toneOf(verdict) === tone).map(({ group }) => group);
  return text[tone](groupsInHeading(named, words));
}

function revealView(
  groups: readonly GroupFinding[],
  served: NonNullable<FindingSubject["served"]>,
  words: Words<"common" | "finding">,
): RevealView {
  const { finding: text } = words.text;
  const inIt = Object.keys(served.groups).filter((group) => served.groups[group] === "present");
  const sorted = (kind: "agreed" | "missed" | "open") =>
    groups.filter((group) => kindOf(group, served.groups) === kind).map(({ group }) => group);
  const line = (named: readonly string[], say: (list: string) => string) =>
    named.length === 0 ? [] : [say(groupsInSentence(named, words))];
  return {
    title: text.revealTitle,
    text:
      inIt.length === 0
        ? text.revealNothing(served.dishName)
        : text.revealText(served.dishName, groupsInSentence(inIt, words)),
    lines: [
      ...line(sorted("missed"), text.revealMissed),
      ...line(sorted("agreed"), text.revealAgreed),
      ...line(sorted("open"), text.revealOpen),
    ],
  };
}

function kindOf({ group, verdict }: GroupFinding, truths: GroupTruths): "agreed" | "missed" | "open" {
  const truth = truths[group] ?? "unknown";
  if (verdict === "uncertain" || truth === "unknown") return "open";
  return (verdict === "smelled") === (truth === "present") ? "agreed" : "missed";
}
