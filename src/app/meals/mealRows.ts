/** The meals in memory: what a list shows of each, newest first, with the index that they are searched by. */
import type { Meal } from "../../meals/meal.js";
import { indexMeal, searchMeals, type IndexedMeal, type MealFilter } from "../../meals/mealSearch.js";

/** Rows in the store's own order: newest first, and among equals the greater id first. */
export interface MealRows {
  /** Light: good for a list, never to be saved. */
  readonly meals: readonly Meal[];
  readonly index: readonly IndexedMeal[];
  readonly byId: ReadonlyMap<string, Meal>;
}

interface Entry {
  readonly meal: Meal;
  readonly indexed: IndexedMeal;
}

export const NO_ROWS: MealRows = rowsOf([]);

/** Rows of meals that are in the store's order already. */
export function rowsOf(meals: readonly Meal[]): MealRows {
  return fromEntries(meals.map(entryOf));
}

/** Rows that come page by page; they are put together only when they are wanted. */
export interface RowGatherer {
  add(page: readonly Meal[]): void;
  rows(): MealRows;
}

export function gatherRows(): RowGatherer {
  const entries: Entry[] = [];
  return {
    add: (page) => page.forEach((meal) => entries.push(entryOf(meal))),
    rows: () => fromEntries(entries),
  };
}

/** A meal that is new, or takes the place of what was known of it. */
export function withMeal(rows: MealRows, meal: Meal): MealRows {
  const others = entriesOf(rows).filter(({ indexed }) => indexed.id !== meal.id);
  const entry = entryOf(meal);
  const later = others.findIndex(({ indexed }) => comesBefore(entry.indexed, indexed));
  return fromEntries(others.toSpliced(later === -1 ? others.length : later, 0, entry));
}

export function withoutMeal(rows: MealRows, id: string): MealRows {
  return fromEntries(entriesOf(rows).filter(({ indexed }) => indexed.id !== id));
}

/** The rows that a filter lets through, in their order. */
export function matchingMeals(rows: MealRows, filter: MealFilter): readonly Meal[] {
  if (Object.values(filter).every((part) => part === undefined || part === "")) return rows.meals;
  return searchMeals(rows.index, filter).flatMap((id) => rows.byId.get(id) ?? []);
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

function entryOf(meal: Meal): Entry {
  return { meal: lightMeal(meal), indexed: indexMeal(meal) };
}

function entriesOf({ meals, index }: MealRows): Entry[] {
  return index.flatMap((indexed, i) => {
    const meal = meals[i];
    return meal === undefined ? [] : [{ meal, indexed }];
  });
}

function fromEntries(entries: readonly Entry[]): MealRows {
  return {
    meals: entries.map(({ meal }) => meal),
    index: entries.map(({ indexed }) => indexed),
    byId: new Map(entries.map(({ meal }) => [meal.id, meal])),
  };
}

function comesBefore(left: IndexedMeal, right: IndexedMeal): boolean {
  return left.atMs > right.atMs || (left.atMs === right.atMs && left.id > right.id);
}
