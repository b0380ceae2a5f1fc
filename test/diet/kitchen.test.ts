import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { ALLERGEN_NAMES } from "../../src/diet/data/card/allergenNames.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import { CARD_LANGUAGES, kitchenCard } from "../../src/diet/kitchenCard.js";
import { kitchenQuestions } from "../../src/diet/kitchenQuestions.js";
import { DIETS, INTOLERANCES, emptyProfile, type DietProfile } from "../../src/diet/profile.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";

const base = emptyProfile("EU");
const full: DietProfile = {
  diets: DIETS,
  avoidedGroups: FOOD_GROUPS,
  allergies: [
    { allergen: "milk", severity: "mild", note: "" },
    { allergen: "walnut", severity: "lifeThreatening", note: "" },
    { allergen: "Kreuzkümmel", severity: "mild", note: "" },
  ],
  intolerances: [...INTOLERANCES, "Zwiebeln"],
  coeliac: true,
  ownWords: ["Koriander"],
  jurisdiction: "EU",
};

describe("what to ask the kitchen", () => {
  const ask = (text: string, profile: DietProfile, limit?: number) =>
    kitchenQuestions(cautionsFor({ text, profile }), limit);

  it("asks for the stock of a vegetable soup and the rennet of its cheese", () => {
    expect(ask("Minestrone", { ...base, diets: ["ovoLactoVegetarian"] })).toEqual(
      expect.arrayContaining(["stock", "rennet"]),
    );
    expect(ask("Gemüsesuppe", { ...base, diets: ["eatsFishNoMeat"] })).toEqual(["stock"]);
  });

  it("asks for the sauce of a Thai dish, the fryer of chips, the origin of E471", () => {
    expect(ask("Pad Thai", { ...base, diets: ["ovoLactoVegetarian"] })[0]).toBe("fishSauce");
    expect(ask("Pommes", { ...base, diets: ["vegan"] })[0]).toBe("fryer");
    expect(ask("Margarine mit E471", { ...base, diets: ["halal"] })).toContain("origin");
  });

  it("with an allergy asks for the ingredient, the written list and cross-contact", () => {
    const profile: DietProfile = {
      ...base,
      allergies: [{ allergen: "treeNut", severity: "serious", note: "" }],
      diets: ["vegan"],
    };
    expect(ask("Baklava", profile)).toEqual(["nuts", "label", "crossContact"]);
  });

  it("gives three at most, each once, and none without a caution", () => {
    const many = ask("Minestrone, Pad Thai, Pommes, Panna cotta, Pesto", {
      ...base,
      diets: ["vegan"],
      coeliac: true,
    });
    expect(many).toHaveLength(3);
    expect(new Set(many).size).toBe(3);
    expect(ask("Minestrone", { ...base, diets: ["vegan"] }, 1)).toHaveLength(1);
    expect(kitchenQuestions([])).toEqual([]);
  });

  it("puts what the word leaves open before what it says", () => {
    expect(ask("Minestrone mit Schinken", { ...base, diets: ["eatsFishNoMeat"] })[0]).toBe("stock");
  });
});

describe("the kitchen card", () => {
  it.each(CARD_LANGUAGES)("%s: every line filled, gravest first, a help and no guarantee", (language) => {
    const card = kitchenCard(full, language);
    expect(card.lines.map(({ kind }) => kind)).toEqual([
      "allergy",
      "allergy",
      "coeliac",
      "intolerance",
      ...DIETS.map(() => "diet"),
      "avoid",
      "own",
      "crossContact",
      "ask",
      "ask",
    ]); // counted by hand
    for (const text of [card.title, card.note, ...card.lines.map((line) => line.text)]) {
      expect(text.length).toBeGreaterThan(10);
      expect(text).not.toMatch(/[{}]|undefined/);
    }
    expect(card.note).toMatch(/help|Hilfe|aide|ayuda|aiuto/);
  });

  it("names allergens in the words of the list, in the kitchen's language", () => {
    // Source: Reg. (EU) 1169/2011 Annex II in each language, secondary quotations.
    const allergy = (language: (typeof CARD_LANGUAGES)[number]) =>
      kitchenCard(full, language).lines[0]?.text ?? "";
    expect(allergy("en")).toContain("milk and products thereof (including lactose); walnuts; Kreuzkümmel");
    expect(allergy("de")).toContain(
      "Milch und daraus gewonnene Erzeugnisse (einschließlich Laktose); Walnüsse",
    );
    expect(allergy("fr")).toContain("lait et produits à base de lait (y compris le lactose); noix");
    expect(allergy("es")).toContain("leche y sus derivados (incluida la lactosa); nueces");
    expect(allergy("it")).toContain("latte e prodotti a base di latte (incluso lattosio); noci");
    // Source: Osaka Prefecture note, 5 March 2025.
    expect(allergy("ja")).toContain("乳 milk; くるみ walnut");
  });

  it("has a name in five languages for everything that may be chosen as an allergy", () => {
    const allergens = SUBSTANCES.filter((row) => "allergen" in row).map(({ id }) => id);
    expect(Object.keys(ALLERGEN_NAMES).sort()).toEqual([...allergens].sort());
    for (const names of Object.values(ALLERGEN_NAMES)) {
      for (const language of ["en", "de", "fr", "es", "it"] as const)
        expect(names[language].length).toBeGreaterThan(1);
    }
  });

  it("asks for clean pans only where a trace can hurt, and warns of danger only where there is some", () => {
    const kinds = (profile: DietProfile) => kitchenCard(profile, "en").lines.map(({ kind }) => kind);
    expect(kinds({ ...base, diets: ["vegan"] })).toEqual(["diet"]);
    expect(kinds({ ...base, coeliac: true })).toEqual(["coeliac", "crossContact", "ask", "ask"]);
    const mild: DietProfile = { ...base, allergies: [{ allergen: "egg", severity: "mild", note: "" }] };
    expect(kinds(mild).filter((kind) => kind === "allergy")).toHaveLength(1);
    const unknown: DietProfile = { ...base, allergies: [{ allergen: "egg", severity: "unknown", note: "" }] };
    expect(kinds(unknown).filter((kind) => kind === "allergy")).toHaveLength(2);
    expect(kinds(base)).toEqual([]);
  });

  it("keeps a dollar sign in the user's own word as it is", () => {
    expect(kitchenCard({ ...base, ownWords: ["$& sauce"] }, "en").lines[0]?.text).toContain("$& sauce");
  });
});
