import type { CountedShare, FieldRecord } from "../meals/fieldRecord.js";
import type { FoodBeforeReaction } from "../meals/reactionFoods.js";
import type { Review } from "../meals/review.js";
import type { SurprisingName } from "../meals/surprises.js";
import { SNAPSHOT_VERDICTS } from "../meals/findingSnapshot.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";
import { groupName } from "./groupName.js";
import { mealRowView, type MealRowView } from "./mealRowView.js";
import { type Tone, toneOf } from "./tone.js";
import { reliabilityChart, type ReliabilityChartView } from "./reliabilityChart.js";

/** What months of meals add up to. */
export interface ReviewView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly empty: { readonly title: string; readonly text: string } | null;
  readonly field: {
    readonly title: string;
    readonly text: string;
    readonly groups: readonly FieldGroupView[];
  };
  readonly surprises: readonly {
    readonly title: string;
    readonly none: string | null;
    readonly items: readonly {
      readonly name: string;
      readonly text: string;
      readonly kinds: readonly string[];
    }[];
  }[];
  readonly ask: {
    readonly title: string;
    readonly text: string;
    readonly meals: readonly MealRowView[];
  };
  readonly reaction: {
    readonly title: string;
    readonly text: string;
    readonly nothing: string;
    readonly hints: readonly ReactionHintView[];
    readonly none: string | null;
    readonly doctor: string;
  };
  readonly out: { readonly title: string; readonly print: string; readonly csv: string };
}

export interface FieldGroupView {
  readonly group: string;
  readonly name: string;
  /** How often each finding, as shares of the whole; null before the first. */
  readonly said: readonly { readonly tone: Tone; readonly share: number }[] | null;
  readonly lines: readonly string[];
  readonly rates: readonly {
    readonly label: string;
    readonly percent: string | null;
    readonly text: string;
  }[];
  readonly reliability: ReliabilityChartView | null;
}

/** A food that went before reactions. */
export interface ReactionHintView {
  readonly food: string;
  /** Shares of the meals with a reaction, with the food and without it. */
  readonly bars: readonly { readonly label: string; readonly value: string; readonly share: number }[];
  readonly lines: readonly string[];
}

/** Fewer confirmed plates draw a picture that says nothing. */
const LEAST_PLATES_TO_DRAW = 10;

/** Meals to ask about that are shown at once. */
const ASK_AT_ONCE = 10;

type ReviewWords = Words<"common" | "finding" | "meals" | "review">;

/**
 * Words of the review. Nothing here praises or counts days.
 *
 * @param ofSomeDays - were only some days looked at?
 */
export function reviewView(review: Review, words: ReviewWords, ofSomeDays = false): ReviewView {
  const { review: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const { reactionFoods: foods } = review;
  return {
    title: text.title,
    back: text.back,
    text: text.text(whole(review.meals)),
    empty: review.meals === 0 ? emptyOf(ofSomeDays, words) : null,
    field: {
      title: text.fieldTitle,
      text: text.fieldText,
      groups: review.records.map((record) => fieldGroup(record, words)),
    },
    surprises: [
      surprisesOf(text.placesTitle, review.places, words),
      surprisesOf(text.dishesTitle, review.dishes, words),
    ],
    ask: {
      title: text.askTitle,
      text: review.toAskAbout.length === 0 ? text.askNone : text.askText,
      meals: review.toAskAbout.slice(0, ASK_AT_ONCE).map((meal) => mealRowView(meal, words)),
    },
    reaction: {
      title: text.reactionTitle,
      text: text.reactionText(whole(foods.meals), whole(foods.reactions), whole(foods.compared)),
      nothing: text.reactionNothing(whole(foods.nothingWritten)),
      hints: foods.hints.map((hint) => hintView(hint, words)),
      none: foods.hints.length === 0 ? text.reactionNone : null,
      doctor: text.reactionDoctor,
    },
    out: { title: text.printTitle, print: text.print, csv: text.csv },
  };
}

function emptyOf(ofSomeDays: boolean, { text: { review } }: ReviewWords): ReviewView["empty"] {
  return ofSomeDays
    ? { title: review.emptyDaysTitle, text: review.emptyDaysText }
    : { title: review.emptyTitle, text: review.emptyText };
}

function fieldGroup(record: FieldRecord, words: ReviewWords): FieldGroupView {
  const { review: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const { said, confirmed, reliability } = record;
  return {
    group: record.group,
    name: groupName(record.group, words),
    said: saidShares(said),
    lines: [
      text.said(whole(said.smelled), whole(said["not smelled"]), whole(said.uncertain)),
      text.confirmed(whole(confirmed.count), whole(confirmed.of)),
    ],
    rates: [
      rate(text.sensitivity, record.sensitivity, words),
      rate(text.specificity, record.specificity, words),
    ],
    reliability:
      reliability === null || reliability.plates < LEAST_PLATES_TO_DRAW
        ? null
        : reliabilityChart(
            {
              caption: text.reliabilityText(whole(reliability.plates)),
              called: text.called,
              cameTrue: text.cameTrue,
              row: text.reliabilitySpoken,
            },
            reliability.bins,
            words.formats,
          ),
  };
}

function saidShares(said: FieldRecord["said"]): FieldGroupView["said"] {
  const all = SNAPSHOT_VERDICTS.reduce((sum, verdict) => sum + said[verdict], 0);
  if (all === 0) return null;
  return SNAPSHOT_VERDICTS.map((verdict) => ({ tone: toneOf(verdict), share: said[verdict] / all }));
}

function rate(label: string, share: CountedShare, words: ReviewWords) {
  const { review: text } = words.text;
  const percent = (fraction: number) => percentText(fraction, words.formats);
  if (share.share === null) return { label, percent: null, text: text.shareNone };
  return {
    label,
    percent: percent(share.share),
    text: text.share(
      numberText(share.count, words.formats),
      numberText(share.of, words.formats),
      percent(share.interval.low),
      percent(share.interval.high),
    ),
  };
}

function surprisesOf(title: string, names: readonly SurprisingName[], words: ReviewWords) {
  const { review: text } = words.text;
  return {
    title,
    none: names.length === 0 ? text.noSurprises : null,
    items: names.map(({ name, surprisingMeals, confirmedMeals, surprises }) => ({
      name,
      text: text.surprising(
        numberText(surprisingMeals, words.formats),
        numberText(confirmedMeals, words.formats),
      ),
      kinds: [...new Set(surprises.map(({ kind, group }) => text.kinds[kind](groupName(group, words))))],
    })),
  };
}

function hintView(hint: FoodBeforeReaction, words: ReviewWords) {
  const { review: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const { low, high } = hint.oddsRatio;
  return {
    food: hint.food,
    bars: [
      shareBar(text.withIt, hint.reactionsWith, hint.mealsWith, words),
      shareBar(text.withoutIt, hint.reactionsWithout, hint.mealsWithout, words),
    ],
    lines: [
      text.reactionHint(hint.food, whole(hint.reactionsWith), whole(hint.mealsWith)),
      text.reactionWithout(whole(hint.reactionsWithout), whole(hint.mealsWithout)),
      text.reactionStats(
        numberText(hint.adjustedP, words.formats, 4),
        numberText(low, words.formats, 1),
        Number.isFinite(high) ? numberText(high, words.formats, 1) : "∞",
      ),
    ],
  };
}

function shareBar(label: string, reactions: number, meals: number, words: ReviewWords) {
  const share = meals === 0 ? 0 : reactions / meals;
  return { label, value: percentText(share, words.formats), share };
}
