import type { Meal, MealReaction, MealTruth } from "../meals/meal.js";
import type { GroupTruths } from "../kernel/groups.js";
import { isTruthKnown } from "../meals/mealSearch.js";
import type { PlateSuggestion } from "../meals/plateSuggestions.js";
import { sampleWorth } from "../meals/review.js";
import type { Words } from "../text/catalogue.js";
import { dayAndTimeText, numberText, shortDayText } from "../text/formats.js";
import type { CautionsView } from "./cautionsView.js";
import { findingCardView, type FindingCardView } from "./findingCardView.js";
import { groupsInSentence } from "./groupName.js";
import { keptFinding } from "./keptFinding.js";
import { onsetLabel, severityLabel, symptomLabel } from "./reactionFormView.js";
import { suggestionsView, type SuggestionsView } from "./suggestionsView.js";
import { inOrderOfWeight } from "./tone.js";

/** One meal, with what was found, what it turned out to be and how it felt. */
export interface MealDetailView {
  readonly back: string;
  readonly title: string;
  /** The mark of a practice plate. */
  readonly demo: string | null;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  readonly note: { readonly label: string; readonly text: string } | null;
  readonly claims: { readonly label: string; readonly items: readonly string[] } | null;
  readonly photos: readonly { readonly id: string; readonly label: string }[];
  readonly finding: {
    readonly title: string;
    readonly cards: readonly FindingCardView[];
    readonly note: string;
  };
  readonly cautions: CautionsView;
  readonly truth: {
    readonly title: string;
    readonly lines: readonly string[];
    readonly action: string;
  };
  readonly reaction: {
    readonly title: string;
    readonly lines: readonly string[];
    readonly action: string;
  };
  readonly sample: {
    readonly text: string;
    /** Why this plate is worth keeping; null once it is kept. */
    readonly reason: string | null;
    readonly action: string | null;
  } | null;
  /** What would help next, once it is known what this plate was. */
  readonly suggestions: SuggestionsView | null;
  readonly labels: { readonly edit: string; readonly remove: string };
}

/** Is the sniff of a meal a sample? */
export type SampleState =
  | "none"
  | "keeping" // asked for, and being written
  | "kept";

export interface MealDetailState {
  readonly meal: Meal;
  readonly allergyGroups: readonly string[];
  readonly sample: SampleState;
  readonly nowMs: number;
  /** Is it a plate of the practice kitchen? */
  readonly practice: boolean;
  /** What would help the nose most, best first. */
  readonly suggestions: readonly PlateSuggestion[];
}

type DetailWords = Words<"common" | "finding" | "meals" | "nose">;

/** After one meal one thing more is enough. */
const SUGGESTED_AFTER = 1;

/** Words of one meal. */
export function mealDetailView(state: MealDetailState, words: DetailWords): MealDetailView {
  const { meal } = state;
  const { detail, back, noDish } = words.text.meals;
  const outcome = meal.outcome === null ? null : detail.outcomes[meal.outcome];
  return {
    back,
    title: meal.dish === "" ? noDish : meal.dish,
    demo: state.practice ? words.text.common.demoMark : null,
    facts: [
      { label: detail.when, value: dayAndTimeText(meal.at, words.formats) },
      ...(meal.place === "" ? [] : [{ label: detail.place, value: meal.place }]),
      ...(outcome === null ? [] : [{ label: detail.outcomeTitle, value: outcome }]),
    ],
    note: meal.note === "" ? null : { label: detail.note, text: meal.note },
    claims: meal.claims.length === 0 ? null : { label: detail.claims, items: meal.claims },
    photos: meal.photoIds.map((id, i) => ({
      id,
      label: detail.photo(numberText(i + 1, words.formats)),
    })),
    finding: findingOf(state, words),
    cautions: {
      title: detail.cautionsTitle,
      items: meal.cautions.map(({ id, text }) => ({ id, text, because: null })),
      empty: detail.cautionsNone,
    },
    truth: truthOf(meal, words),
    reaction: reactionOf(meal.reaction, words),
    sample: sampleOf(state, words),
    suggestions: suggestedAfter(state, words),
    labels: { edit: detail.edit, remove: detail.remove },
  };
}

function findingOf({ meal, allergyGroups, nowMs }: MealDetailState, words: DetailWords) {
  const { detail } = words.text.meals;
  if (meal.finding === undefined) return { title: detail.findingTitle, cards: [], note: detail.findingNone };
  const finding = keptFinding(meal.finding);
  const context = { acceptedMissRate: finding.acceptedMissRate, allergyGroups, nowMs };
  return {
    title: detail.findingTitle,
    cards: inOrderOfWeight(finding.groups).map((group) => findingCardView(group, context, words)),
    note: detail.findingKept,
  };
}

function truthOf(meal: Meal, words: DetailWords): MealDetailView["truth"] {
  const { detail } = words.text.meals;
  if (meal.truth === null)
    return { title: detail.truthTitle, lines: [detail.truthNone], action: detail.truthAdd };
  return {
    title: detail.truthTitle,
    lines: [...truthLines(meal.truth, words), ...agreementLines(meal, meal.truth.groups, words)],
    action: detail.truthChange,
  };
}

function truthLines(truth: MealTruth, words: DetailWords): string[] {
  const { detail } = words.text.meals;
  const named = (value: "present" | "absent") =>
    Object.keys(truth.groups).filter((group) => truth.groups[group] === value);
  return [
    ...sentence(named("present"), detail.inIt, words),
    ...sentence(named("absent"), detail.notInIt, words),
    detail.truthSaid(detail.truthSource[truth.source], shortDayText(truth.knownAt, words.formats)),
    ...(truth.note === "" ? [] : [detail.quoted(truth.note)]),
  ];
}

function agreementLines(meal: Meal, truths: GroupTruths, words: DetailWords): string[] {
  const { detail } = words.text.meals;
  const known = (meal.finding?.groups ?? []).filter(({ group }) =>
    ["present", "absent"].includes(truths[group] ?? ""),
  );
  const isRight = ({ group, verdict }: (typeof known)[number]) =>
    (verdict === "smelled") === (truths[group] === "present");
  const said = known.filter(({ verdict }) => verdict !== "uncertain");
  const names = (groups: readonly { readonly group: string }[]) => groups.map(({ group }) => group);
  return [
    ...sentence(names(said.filter((one) => !isRight(one))), detail.missed, words),
    ...sentence(names(said.filter(isRight)), detail.agreed, words),
    ...sentence(names(known.filter(({ verdict }) => verdict === "uncertain")), detail.open, words),
  ];
}

function sentence(groups: readonly string[], say: (list: string) => string, words: DetailWords): string[] {
  return groups.length === 0 ? [] : [say(groupsInSentence(groups, words))];
}

function reactionOf(reaction: MealReaction | null, words: DetailWords): MealDetailView["reaction"] {
  const { detail, reaction: text } = words.text.meals;
  if (reaction === null)
    return { title: detail.reactionTitle, lines: [detail.reactionNone], action: detail.reactionAdd };
  const severity = severityLabel(reaction.severity, words);
  const felt = text.summary(severity, onsetLabel(reaction.onsetMs, words));
  return {
    title: detail.reactionTitle,
    lines: [
      reaction.severity === 0 ? severity : felt,
      ...reaction.symptoms.map((symptom) => symptomLabel(symptom, words)),
      ...(reaction.note === "" ? [] : [reaction.note]),
    ],
    action: detail.reactionChange,
  };
}

function sampleOf({ meal, sample }: MealDetailState, words: DetailWords): MealDetailView["sample"] {
  const { detail } = words.text.meals;
  if (meal.sniffId === undefined) return null;
  // At once, so that what stands below moves with the tap and not after the writing.
  if (sample === "keeping") return { text: detail.keepingSample, reason: null, action: null };
  if (sample === "kept") return { text: detail.keptSample, reason: null, action: null };
  if (!isTruthKnown(meal)) return null;
  const reason = words.text.nose.suggest.worth[sampleWorth(meal)];
  return { text: detail.keepSampleText, reason, action: detail.keepSample };
}

function suggestedAfter({ meal, suggestions }: MealDetailState, words: DetailWords): SuggestionsView | null {
  if (!isTruthKnown(meal)) return null;
  const others = suggestions.filter((one) => !("mealId" in one) || one.mealId !== meal.id);
  return suggestionsView(others, false, words, SUGGESTED_AFTER);
}
