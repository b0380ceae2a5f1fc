/** Finding meals again: an index of what can be asked for, made once a meal, and searched at every key press. */
import type { SnapshotVerdict } from "./findingSnapshot.js";
import { foldText } from "./foldText.js";
import type { Meal, MealOutcome } from "./meal.js";

/** What to look for; a part that is missing lets every meal through. */
export interface MealFilter {
  /** Every word must occur, in any field that was written by hand. */
  readonly text?: string;
  /** A food group that the finding or the truth names. With `verdict`, the group that it was said of. */
  readonly group?: string;
  readonly verdict?: SnapshotVerdict;
  /** The place's whole name, in any spelling of case and accents. */
  readonly place?: string;
  /** ISO 8601 instants; `fromAt` is included and `beforeAt` is not. */
  readonly fromAt?: string;
  readonly beforeAt?: string;
  readonly outcome?: MealOutcome;
  /** Has it become known what was on the plate? */
  readonly truthKnown?: boolean;
  /** Was anything felt afterwards? */
  readonly reaction?: boolean;
}

/** What of a meal can be asked for. */
export interface IndexedMeal {
  readonly id: string;
  readonly atMs: number;
  readonly text: string;
  readonly place: string;
  readonly verdicts: ReadonlyMap<string, SnapshotVerdict>;
  readonly truthGroups: ReadonlySet<string>;
  readonly outcome: MealOutcome | null;
  readonly truthKnown: boolean;
  readonly reaction: boolean;
}

/** Makes the entry of one meal; to be made again when the meal changes. */
export function indexMeal(meal: Meal): IndexedMeal {
  const { truth, reaction } = meal;
  const written = [meal.dish, meal.place, meal.note, ...meal.claims, truth?.note, reaction?.note];
  return {
    id: meal.id,
    atMs: Date.parse(meal.at),
    text: foldText([...written, ...(reaction?.symptoms ?? [])].join("\n")),
    place: foldText(meal.place.trim()),
    verdicts: new Map(meal.finding?.groups.map(({ group, verdict }) => [group, verdict])),
    truthGroups: new Set(Object.keys(truth?.groups ?? {})),
    outcome: meal.outcome,
    truthKnown: isTruthKnown(meal),
    reaction: reaction !== null && reaction.severity > 0,
  };
}

/** Is any group of the plate known to have been present or absent? */
export function isTruthKnown(meal: Meal): boolean {
  return Object.values(meal.truth?.groups ?? {}).some((truth) => truth !== "unknown");
}

/** Places in the index of the meals that match. */
export function searchMeals(index: readonly IndexedMeal[], filter: MealFilter): number[] {
  const matches = matcher(filter);
  return index.flatMap((meal, place) => (matches(meal) ? [place] : []));
}

/** Does this one meal match? For a list that is read from the store page by page. */
export function mealMatches(filter: MealFilter): (meal: Meal) => boolean {
  const matches = matcher(filter);
  return (meal) => matches(indexMeal(meal));
}

function matcher(filter: MealFilter): (meal: IndexedMeal) => boolean {
  const words = foldText(filter.text ?? "")
    .split(/\s+/)
    .filter((word) => word !== "");
  const place = filter.place === undefined ? undefined : foldText(filter.place.trim());
  const fromMs = filter.fromAt === undefined ? -Infinity : Date.parse(filter.fromAt);
  const beforeMs = filter.beforeAt === undefined ? Infinity : Date.parse(filter.beforeAt);
  return (meal) =>
    meal.atMs >= fromMs &&
    meal.atMs < beforeMs &&
    (place === undefined || meal.place === place) &&
    (filter.outcome === undefined || meal.outcome === filter.outcome) &&
    (filter.truthKnown === undefined || meal.truthKnown === filter.truthKnown) &&
    (filter.reaction === undefined || meal.reaction === filter.reaction) &&
    groupMatches(meal, filter) &&
    words.every((word) => meal.text.includes(word));
}

function groupMatches({ verdicts, truthGroups }: IndexedMeal, { group, verdict }: MealFilter): boolean {
  if (group === undefined && verdict === undefined) return true;
  if (group === undefined) return [...verdicts.values()].some((said) => said === verdict);
  if (verdict === undefined) return verdicts.has(group) || truthGroups.has(group);
  return verdicts.get(group) === verdict;
}
