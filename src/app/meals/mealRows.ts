/** The meals in memory: what a list shows of each, newest first, with the index that they are searched by. */
import type { Meal } from "../../meals/meal.js";
import { indexMeal, searchMeals, type IndexedMeal, type MealFilter } from "../../meals/mealSearch.js";

/** Rows in the store's own order: newest first, and among equals the greater id first. */
export interface MealRows {
  /** Light: good for a list, never to be saved. */
  readonly meals: readonly Meal[];
  /** Of the same meals, in the same order. */
  readonly index: readonly IndexedMeal[];
}

export const NO_ROWS: MealRows = { meals: [], index: [] };

/** Rows of meals that are in the store's order already. */
export function rowsOf(meals: readonly Meal[]): MealRows {
  return { meals: meals.map(lightMeal), index: meals.map(indexMeal) };
}

/** Rows that come page by page; they are put together only when they are wanted. */
export interface RowGatherer {
  add(page: readonly Meal[]): void;
  rows(): MealRows;
}

export function gatherRows(): RowGatherer {
  const meals: Meal[] = [];
  const index: IndexedMeal[] = [];
  return {
    add: (page) => {
      const rows = rowsOf(page);
      meals.push(...rows.meals);
      index.push(...rows.index);
    },
    rows: () => ({ meals: meals.slice(), index: index.slice() }),
  };
}

/** A meal that is new, or takes the place of what was known of it. */
export function withMeal(rows: MealRows, meal: Meal): MealRows {
  const others = withoutMeal(rows, meal.id);
  const indexed = indexMeal(meal);
  const later = others.index.findIndex((other) => comesBefore(indexed, other));
  const place = later === -1 ? others.index.length : later;
  return {
    meals: others.meals.toSpliced(place, 0, lightMeal(meal)),
    index: others.index.toSpliced(place, 0, indexed),
  };
}

export function withoutMeal(rows: MealRows, id: string): MealRows {
  const place = rows.index.findIndex((indexed) => indexed.id === id);
  if (place === -1) return rows;
  return { meals: rows.meals.toSpliced(place, 1), index: rows.index.toSpliced(place, 1) };
}

/** The rows that a filter lets through, in their order. */
export function matchingMeals(rows: MealRows, filter: MealFilter): readonly Meal[] {
  if (Object.values(filter).every((part) => part === undefined || part === "")) return rows.meals;
  return searchMeals(rows.index, filter).flatMap((place) => rows.meals[place] ?? []);
}

/** Food groups that some finding or truth names, by name. */
export function groupsIn(rows: MealRows): string[] {
  const names = rows.index.flatMap(({ verdicts, truthGroups }) => [...verdicts.keys(), ...truthGroups]);
  return [...new Set(names)].sort();
}

/** Places, the latest first, each in the spelling of its latest meal. */
export function placesIn({ meals, index }: MealRows): string[] {
  const spellings = new Map<string, string>();
  index.forEach(({ place }, i) => {
    if (place !== "" && !spellings.has(place)) spellings.set(place, meals[i]?.place.trim() ?? "");
  });
  return [...spellings.values()];
}

/** What a list shows of a meal. The rest stays in the store: ten thousand findings with their reasons weigh megabytes. */
function lightMeal(meal: Meal): Meal {
  const { finding, reaction } = meal;
  const groups = finding?.groups.map((group) => ({ ...group, reasons: [], basis: null, set: [] }));
  return {
    ...meal,
    note: "",
    claims: [],
    cautions: [],
    reaction: reaction === null ? null : { symptoms: [], severity: reaction.severity, note: "" },
    ...(finding === undefined || groups === undefined ? {} : { finding: { ...finding, groups } }),
  };
}

function comesBefore(left: IndexedMeal, right: IndexedMeal): boolean {
  return left.atMs > right.atMs || (left.atMs === right.atMs && left.id > right.id);
}
