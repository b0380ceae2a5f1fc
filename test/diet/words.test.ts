import { describe, expect, it } from "vitest";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import type { Caution } from "../../src/diet/caution.js";
import { KNOWLEDGE } from "../../src/diet/data/knowledge.js";
import { QUESTIONS } from "../../src/diet/data/questions.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import { JURISDICTIONS } from "../../src/diet/jurisdiction.js";
import { CARD_LANGUAGES, kitchenCard } from "../../src/diet/kitchenCard.js";
import { shownName } from "../../src/diet/lexicon.js";
import { DIETS, INTOLERANCES, SEVERITIES, emptyProfile, type DietProfile } from "../../src/diet/profile.js";
import { DIET_WORDS_DE } from "../../src/diet/words.de.js";
import { DIET_WORDS_EN } from "../../src/diet/words.en.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";

const everything: DietProfile = {
  ...emptyProfile("EU"),
  diets: DIETS,
  avoidedGroups: FOOD_GROUPS,
  coeliac: true,
  intolerances: INTOLERANCES,
  ownWords: ["Salbei"],
  allergies: SUBSTANCES.filter((row) => "allergen" in row).map(({ id }) => ({
    allergen: id,
    severity: "unknown",
    note: "",
  })),
};

const LANGUAGES = [
  ["English", DIET_WORDS_EN],
  ["German", DIET_WORDS_DE],
] as const;

/** Everything the words can say about a large part of the tables. */
function allSentences(words: (typeof LANGUAGES)[number][1]): string[] {
  const texts = KNOWLEDGE.map((row) => shownName(row.de[0] ?? row.en[0] ?? "")).join("\n");
  const cautions = cautionsFor({
    text: `${texts}\ncoconut milk\nVegane Bolognese\nCarbonara ohne Ei\nlaktosefreie Sahne\nSalbei\nhalal sausage`,
    profile: everything,
    claims: ["kosher"],
  });
  const about = (caution: Caution) => [
    words.caution(caution),
    words.item(caution.item),
    words.provenance(caution),
    words.note(caution) ?? "",
    ...caution.claims.map((claim) => words.claim(claim, caution.item)),
    ...JURISDICTIONS.map((jurisdiction) => words.legal(caution, jurisdiction) ?? ""),
    ...JURISDICTIONS.flatMap((jurisdiction) => words.claimLimits(caution.item, jurisdiction)),
  ];
  return [
    ...cautions.flatMap(about),
    ...JURISDICTIONS.flatMap((jurisdiction) =>
      words.standing({ ...everything, jurisdiction }).map(({ text }) => text),
    ),
    ...QUESTIONS.map(({ id }) => words.question(id)),
    ...JURISDICTIONS.map((jurisdiction) => words.list(jurisdiction)),
    ...SEVERITIES.map((severity) => words.severities[severity]),
    words.nothingRecognised,
    words.help,
  ];
}

/** Design section 3: never an assertion of this kind, in any language of the app or the card. */
const FORBIDDEN =
  /\bsafe\b|\bsafely\b|free from|free of|allergen-free|\bsicher\b|unbedenklich|frei von|geeignet|suitable|\bok\b|okay|✓|✔|✅|sin peligro|seguro|sans danger|sans risque|sicuro|senza rischio/i;
/** "halal" and "kosher" stand only as the name of the user's own diet, or quoted from the menu. */
const OWN_DIET = /^(your diet: (halal|kosher)|deine Ernährung: (halal|koscher))$/;

describe.each(LANGUAGES)("%s", (_name, words) => {
  const sentences = allSentences(words);

  it("never says safe, free from, suitable or the like", () => {
    expect(sentences.length).toBeGreaterThan(1000);
    expect([...new Set(sentences.filter((text) => FORBIDDEN.test(text)))]).toEqual([]);
  });

  it("uses halal and kosher only as the name of the user's own diet or as a quoted claim", () => {
    const found = sentences.filter((text) =>
      /halal|kosh?er|koscher/i.test(text.replace(/[“„][^“”]*[“”]/g, "")),
    );
    expect(new Set(found.filter((text) => !OWN_DIET.test(text)))).toEqual(new Set());
    expect(found.length).toBeGreaterThan(0);
  });

  it("leaves no gap: every sentence is filled", () => {
    expect(sentences.filter((text) => /undefined|null|\{|\}|“”|„“/.test(text))).toEqual([]);
  });

  it("says of every claim that it is claimed and not known", () => {
    const [caution] = cautionsFor({
      text: "vegane Carbonara",
      profile: { ...emptyProfile("EU"), diets: ["vegan"] },
    }).filter(({ claims }) => claims.length > 0);
    const text =
      caution === undefined
        ? ""
        : words.claim(caution.claims[0] ?? { id: "", word: "", start: null, end: null }, caution.item);
    expect(text).toMatch(/claimed, not known|behauptet, nicht bekannt/);
  });

  it("gives the figure behind a label for coeliac disease and lactose, and none for an allergy", () => {
    // Source: Implementing Regulation (EU) No 828/2014, Annex; Food Standards Code 1.2.7 (value from memory).
    const coeliac = { key: "coeliac", kind: "coeliac", value: "coeliac" } as const;
    expect(words.claimLimits(coeliac, "EU").join(" ")).toMatch(/<= 20 mg\/kg .*<= 100 mg\/kg/);
    expect(words.claimLimits(coeliac, "AU_NZ").join(" ")).toMatch(/detectable|nachweisbar/);
    expect(words.claimLimits(coeliac, "JP")).toEqual([]);
    expect(
      words.claimLimits({ key: "", kind: "intolerance", value: "lactose" }, "EU").length,
    ).toBeGreaterThan(2);
    expect(words.claimLimits({ key: "", kind: "allergy", value: "milk" }, "EU")).toEqual([]);
  });

  it("names the law and the date of a list", () => {
    expect(words.list("EU")).toMatch(/1169\/2011.*25 October 2011.*2026-11-25/);
  });

  it("with an allergy: the emergency number first, then smell, steam, staff, doubt, adrenaline", () => {
    const allergic: DietProfile = {
      ...emptyProfile("EU"),
      allergies: [{ allergen: "milk", severity: "mild", note: "" }],
    };
    const lines = words.standing(allergic);
    expect(lines.map(({ id }) => id)).toEqual([
      "emergency",
      "noSmell",
      "steam",
      "askAndTell",
      "inDoubt",
      "adrenaline",
      "crossContact",
      "noDevice",
    ]);
    const text = lines.map((line) => line.text).join(" ");
    expect(text).toMatch(/112/);
    expect(text).toMatch(/no smell|keinen Geruch/);
    expect(text).toMatch(/traces, gluten or lactose|keine Spuren, kein Gluten und keine Laktose/);
    expect(text).toMatch(/steam can carry protein|Dampf kann Eiweiß tragen/);
    expect(text).toMatch(/in writing|schriftlich/);
    expect(text).toMatch(/prescribed adrenaline|verordnetes Adrenalin/);
  });

  it("without an allergy: still that a sniff sees no traces", () => {
    expect(words.standing({ ...emptyProfile("US"), diets: ["vegan"] }).map(({ id }) => id)).toEqual([
      "noSmell",
      "noDevice",
    ]);
    expect(words.standing({ ...emptyProfile("US"), coeliac: true }).map(({ id }) => id)).toContain("inDoubt");
  });

  it.each(JURISDICTIONS)("the emergency number of %s, or the local one", (jurisdiction) => {
    const profile: DietProfile = {
      ...emptyProfile(jurisdiction),
      allergies: [{ allergen: "egg", severity: "mild", note: "" }],
    };
    const text = words.standing(profile)[0]?.text ?? "";
    // Values from memory.
    const numbers = {
      EU: /112/,
      UK: /999/,
      US: /911/,
      CA: /911/,
      AU_NZ: /000.*111/,
      JP: /119/,
      CODEX_2024: /^\D+$/,
    };
    expect(text).toMatch(numbers[jurisdiction]);
  });

  it("names each substance, diet, group, intolerance, severity and list", () => {
    for (const { id } of SUBSTANCES) expect(words.substance(id)).not.toBe("");
    expect(Object.keys(words.jurisdictions)).toEqual([...JURISDICTIONS]);
    expect(Object.keys(words.diets)).toEqual([...DIETS]);
    expect(Object.keys(words.severities)).toEqual([...SEVERITIES]);
  });
});

it("each language says the sentence its own way", () => {
  const profile: DietProfile = {
    ...emptyProfile("EU"),
    allergies: [{ allergen: "egg", severity: "mild", note: "" }],
  };
  const [contains] = cautionsFor({ text: "Carbonara", profile });
  const [often] = cautionsFor({ text: "Quark-Mousse", profile });
  if (contains === undefined || often === undefined) throw new Error("no caution");
  expect(DIET_WORDS_EN.caution(contains)).toBe("“Carbonara” contains egg.");
  expect(DIET_WORDS_DE.caution(contains)).toBe("„Carbonara“ enthält Ei.");
  expect(DIET_WORDS_EN.caution(often)).toBe("“Mousse” often contains egg.");
  expect(DIET_WORDS_DE.caution({ ...often, level: "mayContain" })).toBe("„Mousse“ kann Ei enthalten.");
  expect(DIET_WORDS_EN.legal(contains, "EU")).toBe(
    "On the allergen list of the European Union, item 3: “Eggs and products thereof”.",
  );
  const [pine] = cautionsFor({
    text: "Pinienkerne",
    profile: { ...profile, allergies: [{ allergen: "pineNut", severity: "mild", note: "" }] },
  });
  expect(pine === undefined ? "" : DIET_WORDS_EN.legal(pine, "EU")).toMatch(/nobody has to name it/);
});

it("the card says none of the forbidden words in any language, and names the user's diets only as theirs", () => {
  for (const language of CARD_LANGUAGES) {
    const card = kitchenCard(everything, language);
    for (const text of [card.title, card.note, ...card.lines.map((line) => line.text)])
      expect(text).not.toMatch(FORBIDDEN);
    const religious = card.lines.filter(({ text }) => /halal|kosher|koscher|casher/i.test(text));
    expect(religious.every(({ kind }) => kind === "diet")).toBe(true);
    expect(religious).toHaveLength(2);
  }
});
