/** Places and dishes whose plates turned out to be something else than was said. */
import { foldText } from "./foldText.js";
import { groupBy } from "./groupBy.js";
import type { Meal } from "./meal.js";
import { isTruthKnown } from "./mealSearch.js";

/** What was wrong about one plate. */
export type SurpriseKind =
  | "presentButNotSmelled" // the nose missed it
  | "smelledButAbsent" // the nose raised a false alarm
  | "presentAgainstClaim"; // the menu or the staff had denied it

/** One group on one plate that was something else than said. */
export interface Surprise {
  readonly mealId: string;
  readonly group: string;
  readonly kind: SurpriseKind;
}

/** A place or a dish, with what was wrong there. */
export interface SurprisingName {
  /** In the spelling of its latest meal. */
  readonly name: string;
  /** Its meals whose truth is known at least in part. */
  readonly confirmedMeals: number;
  readonly surprisingMeals: number;
  readonly surprises: readonly Surprise[];
}

/** Does a claim, such as "menu says vegetarian", deny a food group? The diet station knows; the app hands it in. */
export type ClaimDenies = (claim: string, group: string) => boolean;

/** What was wrong about one meal, group by group. */
export function surprisesOf(meal: Meal, claimDenies: ClaimDenies): Surprise[] {
  const surprise = (group: string, kind: SurpriseKind): Surprise => ({ mealId: meal.id, group, kind });
  return Object.entries(meal.truth?.groups ?? {}).flatMap(([group, truth]) => {
    const verdict = meal.finding?.groups.find((one) => one.group === group)?.verdict;
    if (truth === "absent") return verdict === "smelled" ? [surprise(group, "smelledButAbsent")] : [];
    if (truth !== "present") return [];
    return [
      ...(verdict === "not smelled" ? [surprise(group, "presentButNotSmelled")] : []),
      ...(meal.claims.some((claim) => claimDenies(claim, group))
        ? [surprise(group, "presentAgainstClaim")]
        : []),
    ];
  });
}

/**
 * Names with a surprise, the one with most surprising meals first; then the one with fewer confirmed meals, then
 * by name. Meals without the name are left out.
 *
 * @param nameOf - the place, or the dish
 */
export function surprisingNames(
  meals: readonly Meal[],
  nameOf: (meal: Meal) => string,
  claimDenies: ClaimDenies,
): SurprisingName[] {
  const keyOf = (meal: Meal) => foldText(nameOf(meal).trim());
  const named = meals.filter((meal) => isTruthKnown(meal) && keyOf(meal) !== "");
  return [...groupBy(named, keyOf).values()]
    .map((those) => summed(those, nameOf, claimDenies))
    .filter(({ surprisingMeals }) => surprisingMeals > 0)
    .sort(mostSurprisingFirst);
}

function summed(
  meals: readonly Meal[],
  nameOf: (meal: Meal) => string,
  claimDenies: ClaimDenies,
): SurprisingName {
  const latest = meals.reduce((best, meal) => (Date.parse(meal.at) > Date.parse(best.at) ? meal : best));
  const surprises = meals.map((meal) => surprisesOf(meal, claimDenies));
  return {
    name: nameOf(latest).trim(),
    confirmedMeals: meals.length,
    surprisingMeals: surprises.filter((some) => some.length > 0).length,
    surprises: surprises.flat(),
  };
}

function mostSurprisingFirst(left: SurprisingName, right: SurprisingName): number {
  return (
    right.surprisingMeals - left.surprisingMeals ||
    left.confirmedMeals - right.confirmedMeals ||
    (left.name < right.name ? -1 : 1)
  );
}
