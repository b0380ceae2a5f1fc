// What a caution says, and to whom: allergy, intolerance, coeliac disease and diets.
import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import type { DietProfile } from "../../src/diet/profile.js";
import { base, allergy, diet, seen, levelOf } from "./askCautions.js";

describe("a caution", () => {
  it("says which word, where, which row, which list and what to ask", () => {
    const text = "Salat mit Croûtons und Sesam";
    const [caution] = cautionsFor({ text, profile: allergy("sesame") });
    expect(caution).toMatchObject({
      id: "allergy:sesame/sesame/sesame",
      item: { key: "allergy:sesame", kind: "allergy", value: "sesame" },
      level: "contains",
      triggers: [{ word: "Sesam", start: text.indexOf("Sesam"), end: text.length }],
      row: { id: "sesame", mark: "SEEN" },
      basis: { legal: { listed: "listed", itemNumber: 11 } },
      ask: "nuts",
    });
    expect(caution?.row?.source).toMatch(/1169\/2011/);
  });

  it("keeps offsets of the text as given, with decomposed umlauts and soft hyphens", () => {
    const text = "1. Ka\u0308se\u00adkuchen";
    const [caution] = cautionsFor({ text, profile: allergy("milk") });
    expect(text.slice(caution?.triggers[0]?.start, caution?.triggers[0]?.end)).toBe("Ka\u0308se\u00adkuchen");
  });

  it("comes once for an item, substance and row, with every word that triggered it", () => {
    const cautions = cautionsFor({ text: "Butter, Buttergebäck, Butter", profile: allergy("milk") });
    const butter = cautions.filter(({ row }) => row?.id === "butter");
    expect(butter.map(({ triggers }) => triggers.map(({ start }) => start))).toEqual([[0, 8, 22]]); // counted by hand
  });

  it("keeps the strongest level, whichever word comes first", () => {
    expect(levelOf("Salat ohne Ei\nSalat mit Ei", allergy("egg"))).toBe("contains");
    expect(levelOf("Salat mit Ei\nSalat ohne Ei", allergy("egg"))).toBe("contains");
    const [egg] = cautionsFor({ text: "Salat ohne Ei\nSalat mit Ei", profile: allergy("egg") });
    expect(egg?.triggers.map(({ start }) => start)).toEqual([24, 11]); // the stronger one first, counted by hand
  });

  it("is sorted: allergies first, then by level", () => {
    const profile: DietProfile = { ...allergy("egg"), coeliac: true, diets: ["vegan"], ownWords: ["Salbei"] };
    const kinds = cautionsFor({ text: "Saltimbocca mit Salbei und Tagliatelle", profile }).map(
      ({ item }) => item.kind,
    );
    expect([...new Set(kinds)]).toEqual(["allergy", "coeliac", "diet", "own"]);
  });

  it("is not made up: words without a row give an empty list", () => {
    expect(
      cautionsFor({
        text: "Kopfsalat mit Gurke und Petersilie",
        profile: { ...allergy("milk", "egg"), diets: ["vegan"] },
      }),
    ).toEqual([]);
    expect(cautionsFor({ text: "", profile: diet("vegan") })).toEqual([]);
    expect(cautionsFor({ text: "Speckpfannkuchen", profile: base })).toEqual([]);
  });
});

describe("allergy, intolerance and coeliac disease are three things", () => {
  const text = "Hartkäse, Weizenmehl, Haferflocken";

  it("aged cheese is milk for the allergic and little lactose for the intolerant", () => {
    expect(levelOf("Parmesan", allergy("milk"))).toBe("contains");
    expect(levelOf("Parmesan", { ...base, intolerances: ["lactose"] })).toBe("mayContain");
    expect(levelOf("Sahne", { ...base, intolerances: ["lactose"] })).toBe("contains");
  });

  it("oats are named for coeliac disease as often unfit, for wheat allergy hardly, for oat allergy fully", () => {
    // Source: CXS 118-1979 footnote 1: oats are tolerated by most but not all.
    expect(levelOf("Haferflocken", { ...base, coeliac: true })).toBe("oftenContains");
    expect(levelOf("Haferflocken", allergy("oats"))).toBe("contains");
    expect(levelOf("Haferflocken", allergy("wheat"))).toBe("mayContain"); // grown and milled beside wheat
  });

  it("each gives its own cautions with its own keys", () => {
    const profile: DietProfile = { ...allergy("wheat"), coeliac: true, intolerances: ["gluten"] };
    const keys = new Set(cautionsFor({ text, profile }).map(({ item }) => item.key));
    expect(keys).toEqual(new Set(["allergy:wheat", "coeliac", "intolerance:gluten"]));
  });

  it("a generic word may be the special allergen: nuts may be hazelnuts", () => {
    expect(levelOf("mixed nuts", allergy("hazelnut"))).toBe("mayContain");
    expect(levelOf("hazelnuts", allergy("treeNut"))).toBe("contains");
    expect(levelOf("walnuts", allergy("hazelnut"))).toBe("none");
  });

  it("an allergy to something without a row is looked for by its word, as strictly", () => {
    expect(levelOf("Linsen mit Kreuzkümmel, ohne Chemie", allergy("Kreuzkümmel"))).toBe("contains");
    const [caution] = cautionsFor({ text: "Erdbeerkuchen", profile: allergy("Erdbeere") });
    expect(caution).toMatchObject({
      item: { kind: "allergy" },
      level: "contains",
      substance: null,
      ask: "ownWord",
    });
  });

  it("an own word that names an ingredient brings that ingredient's hidden places", () => {
    expect(levelOf("Carbonara", { ...base, ownWords: ["Schweinefleisch"] })).toBe("contains");
    expect(levelOf("Carbonara", { ...base, ownWords: ["pig"] })).toBe("contains");
    expect(levelOf("Reispfanne mit Koriandergrün", { ...base, ownWords: ["Koriander"] })).toBe("contains");
    expect(levelOf("Omelett", { ...base, ownWords: ["Carbonara"] })).toBe("none"); // a dish is no ingredient
  });
});

describe("diets", () => {
  it("eatsFishNoMeat lets fish, prawns, egg and milk pass without a word", () => {
    expect(seen("Lachs, Garnelen, Miesmuscheln, Rührei, Sahne", diet("eatsFishNoMeat"))).toEqual([]);
  });

  it.each([
    // Source: ISO 23662:2021 s.4.2 to 4.5.
    ["ovoLactoVegetarian", false, false],
    ["ovoVegetarian", true, false],
    ["lactoVegetarian", false, true],
    ["vegan", true, true],
  ] as const)("%s: milk touched %s, egg touched %s, honey by vegans only", (id, milk, egg) => {
    expect(levelOf("Milch", diet(id)) === "contains").toBe(milk);
    expect(levelOf("Rührei", diet(id)) === "contains").toBe(egg);
    expect(levelOf("Honig", diet(id)) === "contains").toBe(id === "vegan");
    expect(levelOf("Anchovis", diet(id))).toBe("contains");
  });

  it("for halal and kosher a permitted animal is of unclear origin, and a certificate is asked for", () => {
    for (const id of ["halal", "kosher"] as const) {
      expect(cautionsFor({ text: "Lammkeule", profile: diet(id) })).toMatchObject([
        { level: "originUnclear", ask: "slaughter" },
      ]);
      expect(levelOf("Schinken", diet(id))).toBe("contains");
      expect(levelOf("Gelatine", diet(id))).toBe("originUnclear");
    }
    expect(levelOf("Rotwein", diet("halal"))).toBe("contains");
    expect(levelOf("Aal", diet("kosher"))).toBe("contains");
    expect(levelOf("Lachs", diet("kosher"))).toBe("none");
  });

  it("kosher: meat and milk meet across the words of one text", () => {
    const [pair] = cautionsFor({ text: "Kalb in Sahne", profile: diet("kosher") });
    expect(pair).toMatchObject({ id: "diet:kosher/meatWithMilk", level: "contains" });
    expect(pair?.triggers.map(({ word }) => word)).toEqual(["Kalb", "Sahne"]);
    expect(cautionsFor({ text: "Kalb mit Reis", profile: diet("kosher") }).map(({ id }) => id)).not.toContain(
      pair?.id,
    );
    expect(
      cautionsFor({ text: "Kalb, vielleicht Butter: kann Butter enthalten", profile: diet("kosher") })[0]
        ?.level,
    ).toBe("contains");
  });
});
