import type { ActiveNose } from "../flows/teachState.js";
import type { Nose } from "../nose/nose.js";
import type { RefreshNeed } from "../nose/refreshNeed.js";
import type { GroupReport } from "../nose/report.js";
import { FALSE_ALARM_RATE } from "../finding/bands.js";
import { leastCalibrationCount } from "../stats/conformal.js";
import { clopperPearsonUpper, trialsToShow } from "../stats/proportionInterval.js";
import type { Words } from "../text/catalogue.js";
import { agoText, numberText, percentText } from "../text/formats.js";
import { groupName, groupsInSentence } from "./groupName.js";
import { movedText } from "./movedText.js";
import { rateView, type RateView } from "./rateView.js";
import { refreshView, type RefreshView } from "./refreshView.js";

export type NosePage =
  | "samples"
  | "teach"
  | "report"
  | "versions"
  | "fitness"
  | "live"
  | "sniffers"
  | "practice"
  | "glossary"
  | "transfer";

/** How good the nose is for one group. */
export interface NoseGroupView {
  readonly group: string;
  readonly name: string;
  readonly plates: string;
  readonly rates: readonly RateView[];
  /** Can it ever say *not smelled* at the accepted miss rate? */
  readonly clearing: string;
  /** What it lacks to say *smelled*; null where it has enough. */
  readonly alarming: string | null;
}

export interface NoseCardView {
  readonly name: string;
  readonly demo: string | null;
  readonly taught: string;
  /** Where it was moved from; null where it was taught on its sniffer. */
  readonly moved: string | null;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly groupsTitle: string;
  readonly groupsText: string;
  readonly groups: readonly NoseGroupView[];
  readonly cannotTitle: string;
  readonly cannot: readonly string[];
}

/** The Nose place. */
export interface NoseHomeView {
  readonly title: string;
  readonly loading: string | null;
  readonly problem: { readonly title: string; readonly text: string } | null;
  readonly empty: { readonly title: string; readonly text: string } | null;
  readonly card: NoseCardView | null;
  /** Fresh samples are worthwhile; null where they are not. */
  readonly refresh: RefreshView | null;
  readonly teach: string;
  readonly links: readonly { readonly id: NosePage; readonly label: string; readonly text: string }[];
}

/** Held-out plates with a group that would have been called *not smelled* at the accepted miss rate. */
export interface ShownMisses {
  readonly group: string;
  readonly misses: number;
  readonly plates: number;
}

export interface NoseHomeState {
  readonly active: ActiveNose;
  readonly samples: number;
  readonly acceptedMissRate: number;
  /** Groups that are to be judged. */
  readonly groups: readonly string[];
  readonly nowMs: number;
  /** By group; empty before it is worked out. */
  readonly shown: readonly ShownMisses[];
  /** What there is to refresh the nose with; null without a nose, or for the demo nose. */
  readonly refresh: RefreshNeed | null;
}

/** Plates without a group that a finding of *smelled* takes at least. */
const LEAST_ABSENT = leastCalibrationCount(FALSE_ALARM_RATE);

type NoseWords = Words<"common" | "nose" | "transfer" | "offer" | "you" | "practice">;

/** Words of the Nose place. */
export function noseHomeView(state: NoseHomeState, words: NoseWords): NoseHomeView {
  const { nose: text } = words.text;
  const { active } = state;
  return {
    title: text.title,
    loading: active.kind === "loading" ? text.loading : null,
    problem:
      active.kind === "unreadable"
        ? { title: text.unreadable, text: text.unreadableText(active.detail) }
        : null,
    empty: active.kind === "none" ? { title: text.noneTitle, text: text.noneText } : null,
    card: active.kind === "ready" ? cardOf(active.nose, active.demo, state, words) : null,
    refresh: state.refresh === null ? null : refreshView(state.refresh, words),
    teach: text.links.teach,
    links: linksOf(state, words),
  };
}

function linksOf({ active, samples }: NoseHomeState, words: NoseWords): NoseHomeView["links"] {
  const { links, linkTexts } = words.text.nose;
  const report = { id: "report", label: links.report, text: linkTexts.report } as const;
  const { transfer, practice } = words.text;
  const move = { id: "transfer", label: transfer.link, text: transfer.linkText } as const;
  return [
    { id: "samples", label: links.samples, text: linkTexts.samples(numberText(samples, words.formats)) },
    ...(active.kind === "ready" ? [report] : []),
    { id: "versions", label: links.versions, text: linkTexts.versions },
    { id: "fitness", label: links.fitness, text: linkTexts.fitness },
    { id: "live", label: links.live, text: linkTexts.live },
    { id: "sniffers", label: links.sniffers, text: linkTexts.sniffers },
    ...(active.kind === "ready" ? [move] : []),
    { id: "practice", label: practice.link, text: practice.linkText },
    { id: "glossary", label: words.text.you.links.glossary, text: words.text.you.linkTexts.glossary },
  ];
}

function cardOf(nose: Nose, demo: boolean, state: NoseHomeState, words: NoseWords): NoseCardView {
  const { nose: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  return {
    name: nose.name,
    demo: demo ? text.demoText : null,
    taught: text.taught(agoText(nose.taughtAt, state.nowMs, words.formats)),
    moved: movedText(nose.transfer, words),
    facts: [
      { label: text.facts.plates, value: whole(nose.platesTaught) },
      { label: text.facts.sniffs, value: whole(nose.sniffsTaught) },
      { label: text.facts.occasions, value: whole(nose.occasionsTaught) },
      { label: text.facts.model, value: text.models[nose.chosen] ?? nose.chosen },
    ],
    groupsTitle: text.groupsTitle,
    groupsText: text.groupsText,
    groups: nose.report.groups.map((group) =>
      noseGroupView(group, shownOf(group.group, state), state.acceptedMissRate, words),
    ),
    cannotTitle: text.cannotTitle,
    cannot: cannotOf(nose, state.groups, words),
  };
}

/** One group of a nose's report, against the accepted miss rate. */
export function noseGroupView(
  group: GroupReport,
  shown: ShownMisses | null,
  acceptedMissRate: number,
  words: NoseWords,
): NoseGroupView {
  const { nose: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  return {
    group: group.group,
    name: groupName(group.group, words),
    plates: text.platesOf(whole(group.platesPresent), whole(group.platesAbsent)),
    rates: [rateView(text.found, group.sensitivity, words), rateView(text.quiet, group.specificity, words)],
    clearing: clearingText(group, shown, acceptedMissRate, words),
    alarming: alarmingText(group, words),
  };
}

const shownOf = (group: string, { shown }: NoseHomeState) => shown.find((one) => one.group === group) ?? null;

/** Has it shown the accepted miss rate, and if not, how many more plates with the group would, none of them missed? */
function clearingText(
  group: GroupReport,
  shown: ShownMisses | null,
  acceptedMissRate: number,
  words: NoseWords,
): string {
  const { nose: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const percent = (value: number) => percentText(value, words.formats, 1);
  const [misses, plates] = [shown?.misses ?? 0, shown?.plates ?? group.platesPresent];
  const needed = trialsToShow(acceptedMissRate, misses);
  const verdict =
    plates >= needed
      ? text.canClear(percent(acceptedMissRate))
      : text.cannotClear(whole(needed - plates), percent(acceptedMissRate));
  if (shown === null || plates === 0) return verdict;
  return `${text.missed(whole(misses), whole(plates), percent(clopperPearsonUpper(misses, plates)))} ${verdict}`;
}

function alarmingText({ platesAbsent }: GroupReport, words: NoseWords): string | null {
  const more = LEAST_ABSENT - platesAbsent;
  return more <= 0 ? null : words.text.nose.cannotAlarm(numberText(more, words.formats));
}

function cannotOf(nose: Nose, wanted: readonly string[], words: NoseWords): string[] {
  const { cannot, notes } = words.text.nose;
  const untaught = wanted.filter((group) => !nose.groups.some(({ name }) => name === group));
  return [
    cannot.allergens,
    nose.transfer === undefined ? cannot.sniffer : cannot.snifferMoved,
    cannot.strange,
    ...(untaught.length === 0 ? [] : [cannot.untaught(groupsInSentence(untaught, words))]),
    ...nose.report.notes.map((note) => notes[note]),
  ];
}
