import { describe, expect, it } from "vitest";
import { allergyGroupsOf, avoidedGroupsOf } from "../../src/diet/avoidedGroupsOf.js";
import { emptyProfile, type DietId, type DietProfile } from "../../src/diet/profile.js";

const base = emptyProfile("EU");
const allergic = (...allergens: string[]): DietProfile => ({
  ...base,
  allergies: allergens.map((allergen) => ({ allergen, severity: "serious", note: "" })),
});

describe("the groups a sniff is judged for", () => {
  it.each<[DietId, string[]]>([
    ["eatsFishNoMeat", ["meat"]],
    ["ovoLactoVegetarian", ["meat", "fish", "shellfish"]],
    ["ovoVegetarian", ["meat", "fish", "shellfish", "dairy"]],
    ["lactoVegetarian", ["meat", "fish", "shellfish", "egg"]],
    ["vegan", ["meat", "fish", "shellfish", "dairy", "egg"]],
    ["halal", ["alcohol"]],
    ["kosher", ["shellfish"]],
    ["ownList", []],
  ])("%s", (diet, groups) => {
    expect(avoidedGroupsOf({ ...base, diets: [diet] })).toEqual(groups);
  });

  it("come from allergies and own words too, each once, in the order of the app", () => {
    const profile: DietProfile = {
      ...allergic("hazelnut", "shrimp"),
      diets: ["eatsFishNoMeat"],
      avoidedGroups: ["alcohol", "meat"],
      intolerances: ["lactose", "Zwiebeln"],
      ownWords: ["Eier", "Koriander"],
    };
    expect(avoidedGroupsOf(profile)).toEqual(["meat", "shellfish", "dairy", "egg", "nut", "alcohol"]);
  });

  it("are none for gluten, lupin, celery, mustard and sesame: nothing of them can be smelled", () => {
    expect(
      avoidedGroupsOf({ ...allergic("lupin", "celery", "mustard", "sesame", "wheat"), coeliac: true }),
    ).toEqual([]);
  });

  it("an allergy's group is known by itself: there a finding may only raise caution", () => {
    expect(allergyGroupsOf({ ...allergic("milk", "salmon"), diets: ["vegan"] })).toEqual(["fish", "dairy"]);
    expect(allergyGroupsOf({ ...base, diets: ["vegan"] })).toEqual([]);
  });
});
