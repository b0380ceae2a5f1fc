import { ok, type Result } from "../../kernel/result.js";
import type { Meal } from "../../meals/meal.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import { queryOf, type Period } from "./period.js";
import { practiceSniffs } from "./practiceSniffs.js";
import { readMeals } from "./readMeals.js";

/**
 * The meals that a review or a report counts: those of the period, without the plates of the practice kitchen. A
 * virtual plate says nothing of how right the nose is at a real table.
 */
export async function reviewedMeals(
  store: Pick<Store, "listMeals" | "listSniffs">,
  period: Period,
): Promise<Result<Meal[], StoreError>> {
  const practice = await practiceSniffs(store);
  if (!practice.ok) return practice;
  const meals = await readMeals(store, queryOf(period));
  if (!meals.ok) return meals;
  return ok(meals.value.filter(({ sniffId }) => sniffId === undefined || !practice.value.has(sniffId)));
}
