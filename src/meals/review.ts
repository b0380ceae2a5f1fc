/** What months of meals add up to. Nothing here praises, counts days or compares people. */
import { fieldRecords, type FieldRecord } from "./fieldRecord.js";
import type { Meal } from "./meal.js";
import { isTruthKnown } from "./mealSearch.js";
import { reactionFoods, type ReactionFoods } from "./reactionFoods.js";
import { surprisesOf, surprisingNames, type ClaimDenies, type SurprisingName } from "./surprises.js";

/** How to look at the meals. */
export interface ReviewOptions {
  /** Foods of one meal by name. Default: its dish. */
  readonly foodsOf?: (meal: Meal) => readonly string[];
  /** Default: no claim denies anything. */
  readonly claimDenies?: ClaimDenies;
  readonly falseDiscoveryRate?: number;
}

/** The review of some meals. */
export interface Review {
  readonly meals: number;
  readonly records: readonly FieldRecord[];
  readonly places: readonly SurprisingName[];
  readonly dishes: readonly SurprisingName[];
  /** Meals with a finding or a claim of which nobody said yet what was on the plate, newest first. */
  readonly toAskAbout: readonly Meal[];
  readonly reactionFoods: ReactionFoods;
}

/** Reviews meals; deleted ones are left out. */
export function reviewMeals(meals: readonly Meal[], options: ReviewOptions = {}): Review {
  const kept = meals.filter(({ deletedAt }) => deletedAt === undefined);
  const claimDenies = options.claimDenies ?? (() => false);
  const foodsOf = options.foodsOf ?? ((meal: Meal) => [meal.dish]);
  return {
    meals: kept.length,
    records: fieldRecords(kept),
    places: surprisingNames(kept, ({ place }) => place, claimDenies),
    dishes: surprisingNames(kept, ({ dish }) => dish, claimDenies),
    toAskAbout: kept
      .filter((meal) => !isTruthKnown(meal) && (meal.finding !== undefined || meal.claims.length > 0))
      .sort(newestFirst),
    reactionFoods: reactionFoods(kept, foodsOf, options.falseDiscoveryRate),
  };
}

/**
 * Confirmed plates that could be kept as samples, if the person wants to: those first that the nose got wrong,
 * then those that left it uncertain, then the others; newest first among equals.
 *
 * @param sampled - ids of sniffs that are samples already
 */
export function sampleCandidates(meals: readonly Meal[], sampled: ReadonlySet<string>): Meal[] {
  return (
    meals
      .filter(
        (meal) =>
          meal.deletedAt === undefined &&
          meal.sniffId !== undefined &&
          !sampled.has(meal.sniffId) &&
          isTruthKnown(meal),
      )
      // Among thousands each is judged once, not with every comparison.
      .map((meal) => ({ meal, rank: RANK[sampleWorth(meal)] }))
      .sort((left, right) => right.rank - left.rank || newestFirst(left.meal, right.meal))
      .map(({ meal }) => meal)
  );
}

const RANK: Readonly<Record<SampleWorth, number>> = { missed: 2, uncertain: 1, agreed: 0 };

/** What a confirmed plate is worth as a sample: the nose was wrong about it, left it open, or was right. */
export type SampleWorth = "missed" | "uncertain" | "agreed";

/** What this confirmed plate is worth as a sample. */
export function sampleWorth(meal: Meal): SampleWorth {
  if (surprisesOf(meal, () => false).length > 0) return "missed";
  const confirmed = Object.entries(meal.truth?.groups ?? {}).filter(([, truth]) => truth !== "unknown");
  const verdicts = new Map(meal.finding?.groups.map(({ group, verdict }) => [group, verdict]));
  return confirmed.some(([group]) => verdicts.get(group) === "uncertain") ? "uncertain" : "agreed";
}

function newestFirst(left: Meal, right: Meal): number {
  return Date.parse(right.at) - Date.parse(left.at) || (left.id < right.id ? -1 : 1);
}
