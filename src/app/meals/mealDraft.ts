/** A meal as the form holds it, and the form as a meal. */
import type { Meal } from "../../meals/meal.js";
import { claimsOf, type MealDraft } from "../../views/mealFormView.js";
import { fieldTime, instantOf } from "./localTime.js";

/** An empty form for a meal that begins now. */
export const emptyDraft = (at: string): MealDraft => ({
  dish: "",
  place: "",
  when: fieldTime(at),
  note: "",
  claims: "",
  photoIds: [],
  outcome: null,
});

export const draftOf = (meal: Meal): MealDraft => ({
  dish: meal.dish,
  place: meal.place,
  when: fieldTime(meal.at),
  note: meal.note,
  claims: meal.claims.join("\n"),
  photoIds: meal.photoIds,
  outcome: meal.outcome,
});

/** The meal with what the form says; what the form does not know stays. null where the form holds no day and time. */
export function mealWith(meal: Meal, draft: MealDraft, changedAt: string): Meal | null {
  // The field knows no seconds: a time that was not touched stays as exact as it was.
  const at = draft.when === fieldTime(meal.at) ? meal.at : instantOf(draft.when);
  if (at === null) return null;
  return {
    ...meal,
    at,
    dish: draft.dish.trim(),
    place: draft.place.trim(),
    note: draft.note.trim(),
    claims: claimsOf(draft),
    photoIds: draft.photoIds,
    outcome: draft.outcome,
    changedAt,
  };
}
