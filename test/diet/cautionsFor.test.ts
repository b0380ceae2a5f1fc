import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import type { Caution } from "../../src/diet/caution.js";
import { emptyProfile, type DietId, type DietProfile } from "../../src/diet/profile.js";

const base = emptyProfile("EU");
const allergy = (...allergens: string[]): DietProfile => ({
  ...base,
  allergies: allergens.map((allergen) => ({ allergen, severity: "unknown", note: "" })),
});
const diet = (...diets: DietId[]): DietProfile => ({ ...base, diets });

const short = (cautions: readonly Caution[]): string[] =>
  cautions.map(
    ({ level, substance, triggers }) => `${level} ${substance ?? "own"} <${triggers[0]?.word ?? ""}>`,
  );
const seen = (text: string, profile: DietProfile, claims: readonly string[] = []): string[] =>
  short(cautionsFor({ text, profile, claims }));
/** Strongest level for one profile item; "none" if the list does not touch it. */
const levelOf = (text: string, profile: DietProfile, claims: readonly string[] = []): string =>
  cautionsFor({ text, profile, claims })[0]?.level ?? "none";

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

describe("may contain", () => {
  it.each([
    "May contain traces of nuts.",
    "may contain nuts, milk and soya",
    "Kann Spuren von Nüssen enthalten",
    "Kann Nüsse und Sesam enthalten.",
    "Produced in a facility that handles nuts",
    "In unserem Betrieb werden Nüsse verarbeitet",
  ])("%s", (text) => {
    expect(levelOf(text, allergy("treeNut"))).toBe("mayContain");
  });

  it("ends with its sentence", () => {
    expect(levelOf("May contain milk. Walnuts", allergy("treeNut"))).toBe("contains");
    expect(levelOf("Kann Spuren von Milch enthalten, Walnüsse", allergy("treeNut"))).toBe("contains");
    expect(levelOf("Walnüsse. Kann Spuren von Nüssen enthalten", allergy("treeNut"))).toBe("contains");
  });

  it("a plain can or kann opens nothing", () => {
    expect(levelOf("Suppe kann mit Walnüssen bestellt werden", allergy("treeNut"))).toBe("contains");
    expect(levelOf("you can add walnuts", allergy("treeNut"))).toBe("contains");
  });
});

describe("without, -free and claims", () => {
  it.each([
    ["Carbonara without egg", "without"],
    ["Carbonara, ohne Ei", "without"],
    ["egg-free carbonara", "without"],
    ["Carbonara (eifrei)", "without"],
    ["Carbonara, no egg", "without"],
    ["Carbonara, contains no eggs", "without"],
    ["Carbonara, frei von Ei", "without"],
    ["vegan carbonara", "vegan"],
    ["Carbonara (vegan)", "vegan"],
    ["vegane Carbonara", "vegan"],
  ])("%s: the egg stays for an allergy, and the claim stands beside it", (text, claim) => {
    const carbonara = cautionsFor({ text, profile: allergy("egg") }).find(
      ({ row }) => row?.id === "carbonara",
    );
    expect(carbonara?.level).toBe("contains");
    expect(carbonara?.claims.map(({ id }) => id)).toContain(claim);
  });

  it.each([
    "Carbonara (vegan)",
    "vegane Carbonara",
    "Carbonara ohne Speck",
    "plant-based carbonara",
    "Carbonara [V]",
  ])("%s: for a diet the pork becomes may contain, and is not dropped", (text) => {
    const all = cautionsFor({ text, profile: diet("ovoLactoVegetarian") });
    const pork = all.find(({ row, substance }) => row?.id === "carbonara" && substance === "pork");
    expect(pork?.level).toBe("mayContain");
    expect(pork?.claims).not.toEqual([]);
  });

  it("coeliac disease is held as strictly as an allergy", () => {
    const bread = cautionsFor({ text: "glutenfreies Brot", profile: { ...base, coeliac: true } }).find(
      ({ row }) => row?.id === "bread",
    );
    expect(bread).toMatchObject({ level: "contains", claims: [{ id: "without", word: "glutenfreies" }] });
  });

  it("a claim given apart from the text speaks of the whole dish", () => {
    expect(levelOf("Bolognese", diet("vegan"))).toBe("contains");
    expect(levelOf("Bolognese", diet("vegan"), ["vegan"])).toBe("mayContain");
    expect(levelOf("Bolognese", allergy("beef"), ["vegan"])).toBe(levelOf("Bolognese", allergy("beef")));
    const [caution] = cautionsFor({ text: "Bolognese", profile: diet("vegan"), claims: ["vegan"] });
    expect(caution?.claims).toEqual([{ id: "vegan", word: "vegan", start: null, end: null }]);
  });

  it("a claim before a noun speaks of that noun only", () => {
    const plain = cautionsFor({ text: "vegan sausage in a brioche bun", profile: diet("vegan") });
    expect(plain.filter(({ level }) => level === "contains").map(({ row }) => row?.id)).toEqual(["brioche"]);
  });

  it("a claim for one dish says nothing of the other", () => {
    expect(levelOf("vegan burger or beef burger", diet("eatsFishNoMeat"))).toBe("contains");
    expect(levelOf("vegane Wurst oder Rindswurst", diet("eatsFishNoMeat"))).toBe("contains");
    expect(levelOf("Vegane Lasagne\nRindsroulade", diet("eatsFishNoMeat"))).toBe("contains");
  });

  it.each([
    "vegane Bolognese auf Wunsch",
    "vegan bolognese available",
    "Bolognese, vegan on request",
    "Bolognese (auch vegan)",
    "Bolognese, vegane Option möglich",
    "Bolognese, nicht vegan",
  ])("%s weakens nothing", (text) => {
    expect(levelOf(text, diet("ovoLactoVegetarian"))).toBe("contains");
  });

  it("lactose-free says something to lactose intolerance and nothing to milk allergy", () => {
    // Source: Food Safety Authority of Ireland, Lactose-free claims: a lactose-free food may contain milk protein.
    const intolerant = { ...base, intolerances: ["lactose"] };
    expect(levelOf("Lactose-free cream", intolerant)).toBe("mayContain");
    const cream = cautionsFor({ text: "Lactose-free cream", profile: allergy("milk") }).find(
      ({ row }) => row?.id === "cream",
    );
    expect(cream).toMatchObject({ level: "contains", claims: [] });
    expect(levelOf("laktosefrei", allergy("milk"))).not.toBe("none");
  });

  it("a religious claim speaks to its own diet only", () => {
    expect(levelOf("halal sausage", diet("halal"))).toBe("mayContain");
    expect(levelOf("halal sausage", diet("ovoLactoVegetarian"))).toBe("contains");
  });

  it.each([
    ["free-range eggs", "contains"],
    ["Freilandeier", "contains"],
    ["not without egg", "contains"],
    ["nicht ohne Ei", "contains"],
    ["Salat ohne Ei", "mayContain"],
    ["Salat ohne Speck, Ei", "contains"],
    ["Salat ohne Speck mit Ei", "contains"],
    ["Salat ohne Speck und Ei", "mayContain"],
  ])("%s: egg %s", (text, level) => {
    expect(levelOf(text, allergy("egg"))).toBe(level);
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
