/** What each touch on the pages of You makes of a profile. */
import { DIETS, INTOLERANCES, type Allergy, type DietProfile } from "../../diet/profile.js";
import { FOOD_GROUPS } from "../../kernel/groups.js";

/** A list with one of its known entries put in or taken out; the order is that of `known`. */
function withEntry<T extends string>(known: readonly T[], list: readonly T[], id: string, on: boolean): T[] {
  return known.filter((entry) => (entry === id ? on : list.includes(entry)));
}

export const withDiet = (profile: DietProfile, diet: string, on: boolean): DietProfile => ({
  ...profile,
  diets: withEntry(DIETS, profile.diets, diet, on),
});

export const withAvoidedGroup = (profile: DietProfile, group: string, on: boolean): DietProfile => ({
  ...profile,
  avoidedGroups: withEntry(FOOD_GROUPS, profile.avoidedGroups, group, on),
});

const isKnown = (name: string): boolean => INTOLERANCES.some((known) => known === name);

/** The intolerances of a profile as the page holds them: ticked ones, and the person's own words. */
export function splitIntolerances({ intolerances }: DietProfile): {
  readonly ticked: readonly string[];
  readonly own: readonly string[];
} {
  return {
    ticked: intolerances.filter(isKnown),
    own: intolerances.filter((name) => !isKnown(name)),
  };
}

/** Both together, each once. */
export const withIntolerances = (
  profile: DietProfile,
  ticked: readonly string[],
  own: readonly string[],
): DietProfile => ({ ...profile, intolerances: [...new Set([...ticked, ...own])] });

/**
 * An allergy in the place of the one at `index`; -1 for a new one. An allergen stands in the list once: where it is
 * there already, what was said last holds, and an older note stays if there is no new one.
 */
export function withAllergy(profile: DietProfile, index: number, allergy: Allergy): DietProfile {
  const others = profile.allergies.filter((_, place) => place !== index);
  const same = others.find(({ allergen }) => allergen === allergy.allergen);
  const merged = { ...allergy, note: allergy.note === "" ? (same?.note ?? "") : allergy.note };
  if (index < 0 && same === undefined) return { ...profile, allergies: [...profile.allergies, merged] };
  const place = index < 0 ? profile.allergies.findIndex((one) => one === same) : index;
  return {
    ...profile,
    allergies: profile.allergies
      .map((one, i) => (i === place ? merged : one))
      .filter((one) => one === merged || one.allergen !== allergy.allergen),
  };
}

export const withoutAllergy = (profile: DietProfile, index: number): DietProfile => ({
  ...profile,
  allergies: profile.allergies.filter((_, place) => place !== index),
});
