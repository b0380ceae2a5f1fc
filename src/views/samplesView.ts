import { FALSE_ALARM_RATE } from "../finding/bands.js";
import type { PlateSuggestion } from "../meals/plateSuggestions.js";
import type { GroupTruths } from "../kernel/groups.js";
import { leastCalibrationCount } from "../stats/conformal.js";
import { trialsToShow } from "../stats/proportionInterval.js";
import type { Words } from "../text/catalogue.js";
import { dayAndTimeText, numberText, percentText } from "../text/formats.js";
import { groupName, groupsInSentence } from "./groupName.js";
import { suggestionsView, type SuggestionsView } from "./suggestionsView.js";

/** One kept sample, as the store's note tells it. */
export interface SampleNote {
  readonly sniffId: string;
  /** ISO 8601 instant. */
  readonly takenAt: string;
  readonly dish: string;
  readonly plate: string;
  readonly occasion: string;
  readonly snifferId: string;
  readonly groups: GroupTruths;
  readonly demo: boolean;
}

/** How many plates of one group there are, and how many more it takes. */
export interface SampleCountView {
  readonly group: string;
  readonly name: string;
  readonly present: string;
  readonly absent: string;
  readonly presentShare: number;
  readonly absentShare: number;
  readonly needed: string;
}

export interface SampleRowView {
  readonly id: string;
  readonly dish: string;
  readonly when: string;
  readonly groups: string;
  readonly demo: string | null;
  readonly removeLabel: string;
}

/** The samples page. */
export interface SamplesView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly countsTitle: string;
  readonly presentLabel: string;
  readonly absentLabel: string;
  readonly neededText: string;
  readonly counts: readonly SampleCountView[];
  readonly plan: { readonly title: string; readonly text: string };
  readonly suggestions: SuggestionsView | null;
  readonly listTitle: string;
  readonly rows: readonly SampleRowView[];
  readonly remove: string;
  readonly more: string | null;
  readonly dropDemo: string | null;
  readonly bringInDemo: string | null;
  readonly empty: { readonly title: string; readonly text: string } | null;
}

export interface SamplesState {
  /** Newest first. */
  readonly samples: readonly SampleNote[];
  /** Are the samples that come with the app among them? */
  readonly demoIsIn: boolean;
  readonly shown: number;
  /** Groups to count: those to judge, and those that a sample names. */
  readonly groups: readonly string[];
  readonly acceptedMissRate: number;
  /** What would help most, best first. */
  readonly suggestions: readonly PlateSuggestion[];
}

/** Plates without a group that a finding of *smelled* takes at least. */
export const LEAST_ABSENT = leastCalibrationCount(FALSE_ALARM_RATE);

type SampleWords = Words<"common" | "meals" | "nose">;

/** Words of the samples page. */
export function samplesView(state: SamplesState, words: SampleWords): SamplesView {
  const { samples: text } = words.text.nose;
  const { samples, shown, acceptedMissRate } = state;
  const needed = trialsToShow(acceptedMissRate);
  return {
    title: text.title,
    back: words.text.nose.back,
    text: text.text,
    countsTitle: text.counts,
    presentLabel: text.present,
    absentLabel: text.absent,
    neededText: text.neededText(
      percentText(acceptedMissRate, words.formats, 1),
      numberText(needed, words.formats),
    ),
    counts: state.groups.map((group) => countOf(group, samples, needed, words)),
    plan: { title: text.planTitle, text: text.plan },
    suggestions: suggestionsView(
      state.suggestions,
      samples.some(({ demo }) => demo),
      words,
    ),
    listTitle: text.listTitle,
    rows: samples.slice(0, shown).map((sample) => rowOf(sample, words)),
    remove: text.remove,
    more: samples.length > shown ? words.text.common.more : null,
    dropDemo: samples.some(({ demo }) => demo) ? text.dropDemo : null,
    bringInDemo: state.demoIsIn ? null : text.bringInDemo,
    empty: samples.length === 0 ? { title: text.emptyTitle, text: text.emptyText } : null,
  };
}

function platesWith(samples: readonly SampleNote[], group: string, truth: "present" | "absent"): number {
  return new Set(samples.filter(({ groups }) => groups[group] === truth).map(({ plate }) => plate)).size;
}

function countOf(
  group: string,
  samples: readonly SampleNote[],
  needed: number,
  words: SampleWords,
): SampleCountView {
  const { samples: text } = words.text.nose;
  const whole = (value: number) => numberText(value, words.formats);
  const present = platesWith(samples, group, "present");
  const absent = platesWith(samples, group, "absent");
  const morePresent = Math.max(0, needed - present);
  const moreAbsent = Math.max(0, LEAST_ABSENT - absent);
  const missing =
    morePresent > 0 && moreAbsent > 0
      ? text.more(whole(morePresent), whole(moreAbsent))
      : morePresent > 0
        ? text.morePresent(whole(morePresent))
        : moreAbsent > 0
          ? text.moreAbsent(whole(moreAbsent))
          : text.enough;
  return {
    group,
    name: groupName(group, words),
    present: whole(present),
    absent: whole(absent),
    presentShare: Math.min(1, present / needed),
    absentShare: Math.min(1, absent / LEAST_ABSENT),
    needed: missing,
  };
}

function rowOf(sample: SampleNote, words: SampleWords): SampleRowView {
  const { samples: text } = words.text.nose;
  const dish = sample.dish === "" ? text.noDish : sample.dish;
  const named = (truth: "present" | "absent") =>
    Object.keys(sample.groups).filter((group) => sample.groups[group] === truth);
  const parts = [
    { groups: named("present"), say: text.inIt },
    { groups: named("absent"), say: text.notInIt },
  ];
  return {
    id: sample.sniffId,
    dish,
    when: dayAndTimeText(sample.takenAt, words.formats),
    groups: parts
      .filter(({ groups }) => groups.length > 0)
      .map(({ groups, say }) => say(groupsInSentence(groups, words)))
      .join("; "),
    demo: sample.demo ? words.text.common.demoMark : null,
    removeLabel: text.removeLabel(dish),
  };
}
