// Which words bring a caution: compounds, names of several words, E numbers.
import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { allergy, diet, short, seen, levelOf } from "./askCautions.js";

describe("German compounds and spellings", () => {
  // Common practice: words of German menus.
  it.each([
    ["Rinderbrühe", "beef"],
    ["Rinderbruehe", "beef"],
    ["RINDERBRÜHE", "beef"],
    ["Schweinefleischbällchen", "pork"],
    ["Hausmacherleberwurstbrot", "meat"],
    ["Kalbsrahmgulasch", "veal"],
    ["Wildschweinragout", "pork"],
    ["Hähnchen-Curry", "chicken"],
    ["Gänsekeule", "goose"],
    ["Entenbrust", "duck"],
    ["Weiderinderfilet", "beef"],
    ["Bohnen im Speckmantel", "pork"],
    ["Griebenschmalz", "lard"],
  ])("%s holds %s", (text, substance) => {
    const found = cautionsFor({ text, profile: diet("eatsFishNoMeat") }).filter(
      ({ level }) => level === "contains",
    );
    expect(found.map((caution) => caution.substance)).toContain(substance);
  });

  it.each([
    ["Käsespätzle", "milk", "egg", "wheat"],
    ["Kaesespaetzle", "milk", "egg", "wheat"],
    ["Nusskuchen", "treeNut", "wheat"],
    ["Buttermilchpfannkuchen", "milk", "egg", "wheat"],
    ["Lachs-Sahne-Nudeln", "fish", "milk", "wheat"],
    ["Eiersalat", "egg"],
    ["Garnelenspieße", "crustacean"],
    ["Selleriecremesuppe", "celery", "milk"],
    ["Senfsoße", "mustard"],
    ["Haselnüsse", "treeNut"],
    ["Erdnüssen", "peanut"],
    ["Sojasprossen", "soya"],
  ])("%s contains %s", (text, ...allergens) => {
    for (const allergen of allergens) expect(levelOf(text, allergy(allergen)), allergen).toBe("contains");
  });

  it.each([
    ["Buchweizen", "wheat"],
    ["Fleischtomate", "meat"],
    ["Muskatnuss", "treeNut"],
    ["Erdnuss", "treeNut"],
    ["Kokosnuss", "treeNut"],
    ["Kokosmilch", "milk"],
    ["Kakaobutter", "milk"],
    ["Butternusskürbis", "milk"],
    ["Butternusskürbis", "treeNut"],
    ["Reis", "milk"],
    ["Schwein", "sulphites"],
    ["Leberkäse", "animalRennet"],
    ["Austernpilze", "mollusc"],
    ["Weißwurst", "egg"],
    ["Granatapfel", "crustacean"],
    ["Schalotten", "fish"],
    ["Zimtschnecke", "mollusc"],
    ["Lachsschinken", "fish"],
    ["Tintenfisch", "fish"],
    ["Eierschwammerl", "egg"],
    ["Tamarinde", "beef"],
    ["Feldsalat", "lamb"],
    ["klassisch", "milk"],
    ["Küchenchef", "wheat"],
    ["eggplant", "egg"],
    ["pineapple", "apple"],
    ["butterfly", "milk"],
    ["glutenfreier", "egg"],
  ])("%s names no %s", (text, allergen) => {
    const found = cautionsFor({ text, profile: allergy(allergen) }).filter(
      ({ level }) => level === "contains",
    );
    expect(short(found)).toEqual([]);
  });

  it("Wildschwein is pig as well as game, Seelachs is fish and no salmon", () => {
    expect(levelOf("Wildschwein", diet("halal"))).toBe("contains");
    expect(levelOf("Seelachs", allergy("fish"))).toBe("contains");
    expect(levelOf("Seelachs", allergy("salmon"))).toBe("mayContain"); // the word says fish, not which
  });
});

describe("names of several words", () => {
  it("keep each word's own caution beside the name's", () => {
    expect(seen("fish sauce", allergy("fish")).sort()).toEqual([
      "contains fish <fish>",
      "contains fishSauce <fish sauce>",
    ]);
  });

  it("turn a namesake into origin unclear, and never drop it", () => {
    expect(levelOf("milk", allergy("milk"))).toBe("contains");
    const [caution, ...more] = cautionsFor({ text: "coconut milk", profile: allergy("milk") });
    expect(caution).toMatchObject({ level: "originUnclear", namesake: true });
    expect(more).toEqual([]);
  });

  it("do not reach over commas or lines", () => {
    expect(levelOf("coconut, milk", allergy("milk"))).toBe("contains");
    expect(levelOf("coconut\nmilk", allergy("milk"))).toBe("contains");
    expect(seen("soy\nsauce", allergy("wheat"))).toEqual(["contains wheat <soy sauce>"]); // a wrapped list of ingredients
  });

  it.each(["Gado-Gado", "gado gado", "Gadogado"])("%s is one dish", (text) => {
    expect(levelOf(text, allergy("peanut"))).toBe("contains");
  });
});

describe("E numbers", () => {
  // Source of the numbers: the additive rows of src/diet/data, checked in test/published/allergenLists.test.ts.
  it.each(["E120", "E 120", "E-120", "INS 120", "(e120)", "E120i"])("%s is carmine", (text) => {
    expect(seen(text, diet("ovoLactoVegetarian"))).toEqual([
      `contains carmine <${text.replace(/[()]/g, "").replace("-", " ")}>`,
    ]);
  });

  it.each(["E471", "E 472e", "E 477", "E481"])("%s is of either origin", (text) => {
    expect(levelOf(text, diet("vegan"))).toBe("originUnclear");
  });

  it("E1105 is egg, E222 is a sulphite, E322 may be soya or egg", () => {
    expect(levelOf("E1105", allergy("egg"))).toBe("contains");
    expect(levelOf("E222", allergy("sulphites"))).toBe("contains");
    expect(levelOf("E322", allergy("soya"))).toBe("oftenContains");
    expect(levelOf("E322", allergy("egg"))).toBe("originUnclear");
  });

  it("120 alone is a price or a weight", () => {
    expect(seen("Erbsen 120 g", diet("vegan"))).toEqual([]);
    expect(seen("1200, E12, E99999", diet("vegan"))).toEqual([]);
  });
});
