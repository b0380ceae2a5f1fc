import { FOOD_GROUPS, type FoodGroup } from "../kernel/groups.js";
import { DIET_GROUPS } from "./data/dietRules.js";
import type { DietProfile } from "./profile.js";
import { substanceNamed } from "./profileItems.js";
import { groupOf } from "./substanceTree.js";

const groupsOfWords = (words: readonly string[]): FoodGroup[] =>
  words.flatMap((word) => {
    const substance = substanceNamed(word);
    const group = substance === undefined ? undefined : groupOf(substance);
    return group === undefined ? [] : [group];
  });

const inOrder = (groups: readonly FoodGroup[]): FoodGroup[] =>
  FOOD_GROUPS.filter((group) => groups.includes(group));

/** Food groups the user is allergic to: for these a finding may never read "not smelled". */
export const allergyGroupsOf = (profile: DietProfile): FoodGroup[] =>
  inOrder(groupsOfWords(profile.allergies.map((allergy) => allergy.allergen)));

/**
 * Food groups a sniff should be judged for: chosen ones, those of the diets, allergies, intolerances and own words.
 * Gluten, lupin and most other allergens belong to no group: nothing of them can be smelled.
 */
export function avoidedGroupsOf(profile: DietProfile): FoodGroup[] {
  return inOrder([
    ...profile.avoidedGroups,
    ...profile.diets.flatMap((diet) => DIET_GROUPS[diet]),
    ...allergyGroupsOf(profile),
    ...groupsOfWords([...profile.intolerances, ...profile.ownWords]),
  ]);
}
