/** Which plates would help the nose most, and why. Pure: samples, meals and what was shown so far arrive as data. */
import { trialsToShow } from "../stats/proportionInterval.js";
import type { GroupTruths } from "../kernel/groups.js";
import { foldText } from "./foldText.js";
import { groupBy } from "./groupBy.js";
import type { Meal } from "./meal.js";
import { isTruthKnown } from "./mealSearch.js";
import { sampleCandidates, sampleWorth, type SampleWorth } from "./review.js";

/** A sample as far as it is counted here. */
export interface CountedSample {
  readonly sniffId: string;
  readonly plate: string;
  readonly occasion: string;
  readonly dish: string;
  readonly groups: GroupTruths;
}

/** What the nose in use missed among the plates with a group that it had never met. */
export interface ShownMisses {
  readonly group: string;
  readonly misses: number;
  readonly trials: number;
}

export interface SuggestionState {
  readonly samples: readonly CountedSample[];
  readonly meals: readonly Meal[];
  /** Groups that are judged. */
  readonly groups: readonly string[];
  readonly shown: readonly ShownMisses[];
  /** Fraction, above 0 and at most 1. */
  readonly acceptedMissRate: number;
  /** Plates without a group that a finding of *smelled* takes at least; the finding station knows. */
  readonly leastAbsent: number;
}

/** One thing to do for the nose, with what it rests on. */
export type PlateSuggestion =
  | {
      readonly kind: "keepMeal";
      readonly mealId: string;
      readonly dish: string;
      readonly at: string;
      readonly worth: SampleWorth;
    }
  | {
      readonly kind: "askMeal";
      readonly mealId: string;
      readonly dish: string;
      readonly at: string;
      readonly group: string;
      readonly probability: number;
    }
  | {
      readonly kind: "missRate";
      readonly group: string;
      readonly misses: number;
      readonly trials: number;
      /** Plates that would show the accepted rate if none of the further ones is missed. */
      readonly more: number;
    }
  | {
      readonly kind: "present" | "absent";
      readonly group: string;
      readonly have: number;
      readonly more: number;
    }
  | { readonly kind: "occasions"; readonly have: number; readonly more: number }
  | { readonly kind: "newDish"; readonly dish: string; readonly meals: number };

/** From so many sittings a nose can be judged by sitting at all: two to teach on, one to try. */
export const LEAST_OCCASIONS = 3;
/** A dish eaten once is a chance, eaten twice a habit. */
const LEAST_MEALS_OF_A_DISH = 2;
/** Of one kind of suggestion so many are told, so that none crowds out the rest. */
const MOST_OF_A_KIND = 2;
/** Beyond this distance from even odds an answer would hardly surprise. */
const NEAR_EVEN = 0.2;

/** How much each kind is worth before its own numbers count; fractions of the most that one plate can bring. */
const WORTH = {
  keepMeal: { missed: 1, uncertain: 0.9, agreed: 0.4 },
  occasions: 0.85,
  present: 0.8,
  absent: 0.7,
  missRate: 0.6,
  askMeal: 0.5,
  newDish: 0.3,
} as const;

interface Ranked {
  readonly suggestion: PlateSuggestion;
  readonly worth: number;
}

/**
 * Suggestions, the most useful first. A plate whose truth is known already costs nothing and comes first, above all
 * where the nose was wrong; then whatever is scarcest; then meals to ask about, the nearest to even odds first.
 *
 * @throws {RangeError} if the accepted miss rate is out of range
 * @see Lewis and Gale, Proc. 17th SIGIR (1994), 3-12, for asking where the answer is nearest to even odds
 */
export function plateSuggestions(state: SuggestionState): PlateSuggestion[] {
  const ranked = [
    ...mealsToKeep(state),
    ...scarceGroups(state),
    ...ratesNotShown(state),
    ...scarceOccasions(state),
    ...mealsToAsk(state),
    ...dishesNeverTaught(state),
  ].sort((left, right) => right.worth - left.worth);
  const told = new Map<string, number>();
  return ranked.flatMap(({ suggestion }) => {
    const count = (told.get(suggestion.kind) ?? 0) + 1;
    told.set(suggestion.kind, count);
    return count > MOST_OF_A_KIND ? [] : [suggestion];
  });
}

function mealsToKeep({ meals, samples }: SuggestionState): Ranked[] {
  const sampled = new Set(samples.map(({ sniffId }) => sniffId));
  return sampleCandidates(meals, sampled).map((meal) => {
    const worth = sampleWorth(meal);
    const { id: mealId, dish, at } = meal;
    return { worth: WORTH.keepMeal[worth], suggestion: { kind: "keepMeal", mealId, dish, at, worth } };
  });
}

function platesWith(samples: readonly CountedSample[], group: string, truth: "present" | "absent"): number {
  return new Set(samples.filter(({ groups }) => groups[group] === truth).map(({ plate }) => plate)).size;
}

function scarceGroups({ samples, groups, acceptedMissRate, leastAbsent }: SuggestionState): Ranked[] {
  const needed = { present: trialsToShow(acceptedMissRate), absent: leastAbsent };
  return groups.flatMap((group) =>
    (["present", "absent"] as const).flatMap((kind): Ranked[] => {
      const have = platesWith(samples, group, kind);
      const more = needed[kind] - have;
      if (more <= 0) return [];
      return [{ worth: (WORTH[kind] * more) / needed[kind], suggestion: { kind, group, have, more } }];
    }),
  );
}

/** Groups with plates enough that were missed too often: more plates must show that it was bad luck, or that it was not. */
function ratesNotShown({ shown, groups, samples, acceptedMissRate }: SuggestionState): Ranked[] {
  return shown.flatMap(({ group, misses, trials }): Ranked[] => {
    if (misses === 0 || !groups.includes(group)) return [];
    const known = Math.max(trials, platesWith(samples, group, "present"));
    const needed = trialsToShow(acceptedMissRate, misses);
    if (known >= needed) return [];
    const more = needed - known;
    return [
      {
        worth: (WORTH.missRate * more) / needed,
        suggestion: { kind: "missRate", group, misses, trials, more },
      },
    ];
  });
}

function scarceOccasions({ samples }: SuggestionState): Ranked[] {
  const have = new Set(samples.map(({ occasion }) => occasion)).size;
  const more = LEAST_OCCASIONS - have;
  // Before the first sample the groups say enough.
  if (have === 0 || more <= 0) return [];
  return [{ worth: WORTH.occasions, suggestion: { kind: "occasions", have, more } }];
}

function mealsToAsk({ meals, groups }: SuggestionState): Ranked[] {
  const ranked: Ranked[] = [];
  for (const meal of meals) {
    if (meal.deletedAt !== undefined || meal.sniffId === undefined || isTruthKnown(meal)) continue;
    const nearest = nearestToEven(meal, groups);
    if (nearest === null) continue;
    const { id: mealId, dish, at } = meal;
    const { group, probability, distance } = nearest;
    ranked.push({
      worth: WORTH.askMeal * (1 - distance),
      suggestion: { kind: "askMeal", mealId, dish, at, group, probability },
    });
  }
  return ranked;
}

/** The uncertain group whose answer would surprise most; null if none would. */
function nearestToEven({ finding }: Meal, groups: readonly string[]) {
  let nearest: { group: string; probability: number; distance: number } | null = null;
  for (const { group, verdict, probability } of finding?.groups ?? []) {
    if (verdict !== "uncertain" || probability === null || !groups.includes(group)) continue;
    const distance = Math.abs(probability - 0.5);
    if (distance <= NEAR_EVEN && (nearest === null || distance < nearest.distance))
      nearest = { group, probability, distance };
  }
  return nearest;
}

function dishesNeverTaught({ meals, samples }: SuggestionState): Ranked[] {
  const keyOf = (dish: string) => foldText(dish.trim());
  const taught = new Set(samples.map(({ dish }) => keyOf(dish)));
  // Most dishes come again in the same spelling: each spelling is folded once.
  const spellings = new Map<string, number>();
  for (const { dish, deletedAt } of meals)
    if (deletedAt === undefined) spellings.set(dish, (spellings.get(dish) ?? 0) + 1);
  return [...groupBy(spellings, ([dish]) => keyOf(dish))].flatMap(([key, those]): Ranked[] => {
    const [latest] = those;
    const eaten = those.reduce((sum, [, count]) => sum + count, 0);
    if (latest === undefined || key === "" || taught.has(key) || eaten < LEAST_MEALS_OF_A_DISH) return [];
    const worth = WORTH.newDish * (1 - 1 / eaten);
    return [{ worth, suggestion: { kind: "newDish", dish: latest[0].trim(), meals: eaten } }];
  });
}
