/** What the screens say of diets and allergies, over a large part of the tables, in both languages. */
import { describe, expect, it } from "vitest";
import type { Caution } from "../../src/diet/caution.js";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { ALLERGEN_LISTS } from "../../src/diet/data/jurisdictions.js";
import { KNOWLEDGE } from "../../src/diet/data/knowledge.js";
import { QUESTIONS } from "../../src/diet/data/questions.js";
import { SUBSTANCES } from "../../src/diet/data/substances.js";
import { JURISDICTIONS } from "../../src/diet/jurisdiction.js";
import { CARD_LANGUAGES, kitchenCard } from "../../src/diet/kitchenCard.js";
import { shownName } from "../../src/diet/lexicon.js";
import { DIETS, emptyProfile, INTOLERANCES, type DietProfile } from "../../src/diet/profile.js";
import { FOOD_GROUPS } from "../../src/kernel/groups.js";
import { dietCautionView, dietCautionViews } from "../../src/views/dietCautionView.js";
import { substanceName } from "../../src/views/profileItemName.js";
import { sourceText } from "../../src/views/sourceText.js";
import { standingView } from "../../src/views/standingView.js";
import { ENGLISH, GERMAN } from "../browser/gallery/fixtures/words.js";
import { RULE_ROWS } from "../diet/ruleRows.js";

const allergicTo = (...allergens: string[]): DietProfile => ({
  ...emptyProfile("EU"),
  allergies: allergens.map((allergen) => ({ allergen, severity: "unknown", note: "" })),
});

const everything: DietProfile = {
  ...allergicTo(...SUBSTANCES.filter((row) => "allergen" in row).map(({ id }) => id)),
  diets: DIETS,
  avoidedGroups: FOOD_GROUPS,
  coeliac: true,
  intolerances: INTOLERANCES,
  ownWords: ["Salbei"],
};

/** Published titles stay as they were published. */
const TITLES =
  /Food Safety Authority of Ireland, Lactose-free claims|GOV\.UK, Running a food business: Allergies|Health Canada, Priority food allergens \([^)]*\); CFIA 'How to label allergens'|Osaka Prefecture note, 5 March 2025, listing 8 \+ 20|Consumer Affairs Agency advisory council; draft Cabinet Office Ordinance|FAO\/WHO (priority allergen list \([^)]*\)|Risk Assessment of Food Allergens Part 5 \(2023\))|FD&C Act|FASTER Act/g;

const LANGUAGES = [
  ["English", ENGLISH],
  ["German", GERMAN],
] as const;

type Spoken = (typeof LANGUAGES)[number][1];

const menu = `${KNOWLEDGE.map((row) => shownName(row.de[0] ?? row.en[0] ?? "")).join("\n")}
coconut milk\nVegane Bolognese\nCarbonara ohne Ei\nlaktosefreie Sahne\nglutenfreie Pasta\nSalbei\nhalal sausage`;
const cautions = cautionsFor({ text: menu, profile: everything, claims: ["kosher"] });

/** Everything that is said of them. Sources, substances and the menu's own words are quoted, not said. */
function allSentences(words: Spoken): string[] {
  const about = (caution: Caution) =>
    JURISDICTIONS.flatMap((jurisdiction) => {
      const { text, because } = dietCautionView(caution, jurisdiction, words);
      return [text, because ?? ""];
    });
  return [
    ...cautions.flatMap(about),
    ...JURISDICTIONS.flatMap((jurisdiction) =>
      standingView({ ...everything, jurisdiction }, words).map(({ text }) => text),
    ),
    ...QUESTIONS.map((question) => (words === GERMAN ? question.de : question.en)),
  ];
}

/** Design section 3: never an assertion of this kind, in any language of the app or the card. */
const FORBIDDEN =
  /\bsafe\b|\bsafely\b|free from|free of|allergen-free|\bsicher\b|unbedenklich|frei von|geeignet|suitable|\bok\b|okay|✓|✔|✅|sin peligro|seguro|sans danger|sans risque|sicuro|senza rischio/i;

/** What a law, a list or the menu says stands in quotation marks; a source names its own title. */
const ownWords = (sentence: string): string =>
  sentence.replace(/[“„][^“”„]*[“”]/gu, "").replace(/(source|Quelle): .*$/u, "");

it("names every source in German, but for published titles", () => {
  const lists = Object.values(ALLERGEN_LISTS);
  const items = lists.flatMap((list) => list.items);
  const rows = [
    ...RULE_ROWS.map(([, rule]) => rule),
    ...items,
    ...items.flatMap(({ exceptions }) => exceptions ?? []),
  ];
  const sources = [...new Set([...rows.map(({ source }) => source), ...lists.map(({ date }) => date)])];
  expect(sources.length).toBeGreaterThan(20);
  const ownWordsOf = (source: string) => sourceText(source, GERMAN.formats).replace(TITLES, "");
  const english =
    /\b(the|of|and|by|from|not|no|until|this|is|value|practice|quotation|advice|covers|amended|January|March|October)\b/i;
  expect(sources.filter((source) => english.test(ownWordsOf(source)))).toEqual([]);
  expect(sources.map((source) => sourceText(source, ENGLISH.formats))).toEqual(sources);
});

describe.each(LANGUAGES)("%s", (_name, words) => {
  const sentences = allSentences(words);
  const said = (text: string, profile: DietProfile) =>
    cautionsFor({ text, profile }).map((caution) => {
      const view = dietCautionView(caution, profile.jurisdiction, words);
      return `${view.text} · ${view.because ?? ""}`;
    });

  it("never says safe, free from, suitable or the like", () => {
    expect(sentences.length).toBeGreaterThan(1000);
    expect([...new Set(sentences.filter((text) => FORBIDDEN.test(ownWords(text))))]).toEqual([]);
  });

  it("uses halal and kosher only as the name of the user's own diet", () => {
    const found = sentences.filter((text) => /halal|kosh?er|koscher/i.test(ownWords(text)));
    expect(found.length).toBeGreaterThan(0);
    const elsewhere = found.filter(
      (text) => !/^(matters for|wichtig für|betrifft)[^·]*(halal|kosher|koscher)/i.test(text),
    );
    expect(elsewhere).toEqual([]);
  });

  it("leaves no gap: every sentence is filled", () => {
    expect(sentences.filter((text) => /undefined|null|\{|\}|“”|„“/.test(text))).toEqual([]);
  });

  it("says of every claim that it is claimed and not known, and nothing about traces", () => {
    const vegan = said("vegane Carbonara", { ...emptyProfile("EU"), diets: ["vegan"] }).join("\n");
    expect(vegan).toMatch(/claimed, not known|behauptet, nicht bekannt/);
    expect(vegan).not.toMatch(/traces|Spuren/);
    expect(said("Carbonara ohne Ei", allergicTo("egg")).join("\n")).toMatch(
      /no statement about traces|sagt nichts über Spuren/,
    );
  });

  it("gives the figure behind a label for coeliac disease and lactose, and none for an allergy", () => {
    // Source: Implementing Regulation (EU) No 828/2014, Annex; Food Standards Code 1.2.7 (value from memory).
    const coeliac = (jurisdiction: DietProfile["jurisdiction"]) =>
      said("glutenfreie Pasta", { ...emptyProfile(jurisdiction), coeliac: true }).join("\n");
    expect(coeliac("EU")).toMatch(/<= 20 mg\/kg .*<= 100 mg\/kg/);
    expect(coeliac("AU_NZ")).toMatch(/detectable|nachweisbar/);
    expect(coeliac("JP")).not.toMatch(/mg\/kg/);
    const lactose = said("laktosefreie Sahne", { ...emptyProfile("EU"), intolerances: ["lactose"] });
    expect(lactose.join("\n")).toMatch(/on a label|auf einem Etikett/);
    expect(said("milchfreie Sahne", allergicTo("milk")).join("\n")).not.toMatch(
      /on a label|auf einem Etikett/,
    );
  });

  it("says where the legal list names an allergen, and that an unlisted one must be asked for", () => {
    // Source: Regulation (EU) No 1169/2011, Annex II, item 3; pine nuts are in none of its items.
    expect(said("Carbonara", allergicTo("egg")).join("\n")).toMatch(
      /(item|Nummer) 3: [“„]Eggs and products thereof/,
    );
    expect(said("Pinienkerne", allergicTo("pineNut")).join("\n")).toMatch(
      /nobody has to name it there, so ask|Niemand muss es dort nennen, also frag nach/,
    );
  });

  it("gives a reason once where several cautions in a row have it, and drops neither caution nor reason", () => {
    const profile: DietProfile = { ...allergicTo("egg"), diets: ["eatsFishNoMeat"] };
    const found = cautionsFor({ text: "broth with dumplings", profile });
    const alone = found.map((caution) => dietCautionView(caution, "EU", words));
    const together = dietCautionViews(found, "EU", words);
    expect(together.map(({ id, text }) => [id, text])).toEqual(alone.map(({ id, text }) => [id, text]));
    expect(together.filter(({ because }) => because !== null).length).toBeLessThan(alone.length);
    together.forEach((_, i) => {
      // Read on to the next reason, as a reader does: it is the caution's own.
      const next = together.slice(i).find(({ because }) => because !== null);
      expect(next?.because).toBe(alone[i]?.because);
    });
  });

  it("tells of a misspelt name what it was read as, and never more than that it may be in it", () => {
    const [line = ""] = said("Spagetti carbonarra", allergicTo("egg"));
    expect(line).toMatch(/may contain|kann .* enthalten/);
    expect(said("Spagetti carbonarra", allergicTo("egg")).join("\n")).toMatch(/[“„]carbonara[“”]/);
  });

  it("with an allergy: the emergency number first, then smell, steam, staff, doubt, adrenaline", () => {
    const lines = standingView(allergicTo("milk"), words);
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
    const ids = (profile: DietProfile) => standingView(profile, words).map(({ id }) => id);
    expect(ids({ ...emptyProfile("US"), diets: ["vegan"] })).toEqual(["noSmell", "noDevice"]);
    expect(ids({ ...emptyProfile("US"), coeliac: true })).toContain("inDoubt");
  });

  it.each(JURISDICTIONS)("the emergency number of %s, or the local one", (jurisdiction) => {
    const text = standingView({ ...allergicTo("egg"), jurisdiction }, words)[0]?.text ?? "";
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

  it("names every substance", () => {
    for (const { id } of SUBSTANCES) expect(substanceName(id, words)).not.toBe("");
  });
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

it("speaks English of the tables where the app's language is neither English nor German", () => {
  const french: Spoken = { ...ENGLISH, formats: { ...ENGLISH.formats, locale: "fr-FR" } };
  expect(substanceName("egg", french)).toBe(substanceName("egg", ENGLISH));
  expect(substanceName("egg", GERMAN)).not.toBe(substanceName("egg", ENGLISH));
  expect(cautions.map((one) => dietCautionView(one, "EU", french).text)).toEqual(
    cautions.map((one) => dietCautionView(one, "EU", ENGLISH).text),
  );
});
