/** Ten thousand meals: what a key press in the search costs with the index, and without one. */
import { bench, describe } from "vitest";
import { groupByDay } from "../../src/meals/mealDays.js";
import { indexMeal, mealMatches, searchMeals } from "../../src/meals/mealSearch.js";
import { parseMeal } from "../../src/meals/parseMeal.js";
import { reviewMeals } from "../../src/meals/review.js";
import { manyMeals } from "../meals/manyMeals.js";

const meals = manyMeals(10_000);
const index = meals.map(indexMeal);
const filter = { text: "brühe no. 12", group: "meat", verdict: "uncertain" } as const;

describe("one key press in the search over 10,000 meals", () => {
  bench("with the index", () => void searchMeals(index, filter));
  bench("without it", () => void meals.filter(mealMatches(filter)));
});

describe("10,000 meals, once", () => {
  bench("making the index", () => void meals.map(indexMeal));
  bench("checking them on the way out of the store", () => void meals.map(parseMeal));
  bench("grouping them by day", () => void groupByDay(meals, "Europe/Berlin"));
  bench("reviewing them", () => void reviewMeals(meals));
});
