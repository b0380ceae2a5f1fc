/** The list of Meals at 10,000 meals: what the app does at a key press, at a saved meal and while reading. */
import { bench, describe } from "vitest";
import {
  gatherRows,
  groupsIn,
  matchingMeals,
  placesIn,
  rowsOf,
  withMeal,
} from "../../src/app/meals/mealRows.js";
import { MEALS_PAGE } from "../../src/app/meals/readMeals.js";
import type { Meal } from "../../src/meals/meal.js";
import type { MealFilter } from "../../src/meals/mealSearch.js";
import { en } from "../../src/text/en.js";
import { mealDaysView } from "../../src/views/mealDaysView.js";
import { mealsListView } from "../../src/views/mealsListView.js";
import { manyMeals } from "../meals/manyMeals.js";

const PAGE = 250;
const words = { text: en, formats: { locale: "en-GB", timeZone: "Europe/Berlin" } };
const meals = manyMeals(10_000).sort((left, right) => Date.parse(right.at) - Date.parse(left.at));
const rows = rowsOf(meals);
const groups = groupsIn(rows);
const places = placesIn(rows);
const changed: Meal = { ...meals[5_000]!, note: "changed" };

const drawn = (filter: MealFilter, shown: number) => {
  const matching = matchingMeals(rows, filter);
  const choice = { filter, groups, places, days: { from: "", upto: "" }, daysFault: null };
  mealsListView({ ...choice, matching: matching.length, total: 10_000, setAside: 0 }, words);
  mealDaysView({ matching, shown, practice: new Set(), nowMs: 0 }, words);
};

describe("the list at 10,000 meals", () => {
  bench("opening it: the first screen in words", () => drawn({}, MEALS_PAGE));
  bench("a key press: search, and the first screen in words", () => drawn({ text: "brühe" }, MEALS_PAGE));
  bench("scrolled to the thousandth: all that is drawn, in words", () => drawn({}, 1000));
});

describe("keeping 10,000 rows", () => {
  bench("a meal is saved: its row and the index", () => void withMeal(rows, changed));
  bench("reading them page by page", () => {
    const gatherer = gatherRows();
    for (let at = 0; at < meals.length; at += PAGE) gatherer.add(meals.slice(at, at + PAGE));
    gatherer.rows();
  });
  bench("groups and places for the filter", () => void [groupsIn(rows), placesIn(rows)]);
});
