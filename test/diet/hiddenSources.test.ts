/** Hidden animal sources and allergens. Sources: the rows named, from the checked lists of 2026-11-25 or common practice. */
import { expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { emptyProfile, type DietProfile } from "../../src/diet/profile.js";

const base = emptyProfile("EU");
const profiles: Readonly<Record<string, DietProfile>> = {
  vegetarian: { ...base, diets: ["ovoLactoVegetarian"] },
  vegan: { ...base, diets: ["vegan"] },
  halal: { ...base, diets: ["halal"] },
  kosher: { ...base, diets: ["kosher"] },
  coeliac: { ...base, coeliac: true },
  ...Object.fromEntries(
    [
      "fish",
      "crustacean",
      "mollusc",
      "egg",
      "milk",
      "soya",
      "celery",
      "mustard",
      "sesame",
      "lupin",
      "treeNut",
    ].map((allergen) => [
      allergen,
      { ...base, allergies: [{ allergen, severity: "unknown" as const, note: "" }] },
    ]),
  ),
};

it.each([
  ["jelly cubes of gelatine", "vegetarian halal kosher"],
  ["Gummibärchen", "vegan halal"],
  ["Panna cotta", "vegetarian"],
  ["isinglass", "vegetarian fish"],
  ["animal rennet", "vegetarian halal kosher"],
  ["Worcestershire sauce", "vegetarian fish coeliac"],
  ["Caesar dressing", "vegetarian fish egg"],
  ["fish sauce", "vegetarian fish"],
  ["shrimp paste", "vegetarian crustacean kosher"],
  ["red curry paste", "vegetarian crustacean fish"],
  ["dashi", "vegetarian fish"],
  ["miso soup", "vegetarian fish soya"],
  ["oyster sauce", "vegetarian mollusc kosher soya"],
  ["lard", "vegetarian halal kosher"],
  ["refried beans", "vegetarian halal"],
  ["suet pudding", "vegetarian"],
  ["chips fried in dripping", "vegetarian"],
  ["Kraftbrühe", "vegetarian celery"],
  ["Bratensauce", "vegetarian coeliac"],
  ["cochineal", "vegetarian vegan"],
  ["red wine", "vegan halal egg milk"],
  ["mayonnaise", "vegan egg mustard"],
  ["Baiser", "vegan egg"],
  ["frische Tagliatelle", "egg coeliac"],
  ["vegan cheese", "milk soya"],
  ["seitan", "coeliac"],
  ["soy sauce", "coeliac soya"],
  ["Bier", "coeliac halal"],
  ["malt vinegar", "coeliac"],
  ["couscous", "coeliac"],
  ["bulgur", "coeliac"],
  ["Mehlschwitze", "coeliac"],
  ["Pommes", "fish crustacean coeliac vegetarian"],
  ["Gewürzmischung", "celery mustard"],
  ["tahini", "sesame"],
  ["pesto", "milk treeNut vegetarian"],
  ["Lupinenmehl", "lupin"],
  ["Molkenpulver", "milk vegan"],
  ["sodium caseinate", "milk vegan"],
  ["sunflower lecithin", "soya egg"],
  ["mono- and diglycerides", "vegan vegetarian halal kosher"],
  ["Honig", "vegan"],
  ["Pfannkuchen", "egg milk coeliac"],
  ["Brötchen mit Ei bestrichen", "egg coeliac"],
  ["Weinschaumcreme", "halal egg"],
])("%s: a caution for %s", (text, names) => {
  for (const name of names.split(" ")) {
    expect(cautionsFor({ text, profile: profiles[name] ?? base }).length, name).toBeGreaterThan(0);
  }
});

it("lactic acid is no milk, whatever its name", () => {
  // Source: additive lists, E270: normally fermented plant sugar (value from memory).
  expect(cautionsFor({ text: "Milchsäure", profile: profiles["milk"] ?? base })).toEqual([]);
});
