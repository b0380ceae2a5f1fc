import type { CardTexts } from "./cardTexts.js";
import { ALLERGEN_NAMES } from "./data/card/allergenNames.js";
import { CARD_ENGLISH } from "./data/card/english.js";
import { CARD_FRENCH } from "./data/card/french.js";
import { CARD_GERMAN } from "./data/card/german.js";
import { CARD_ITALIAN } from "./data/card/italian.js";
import { CARD_SPANISH } from "./data/card/spanish.js";
import type { AllergenId } from "./data/substances.js";
import { INTOLERANCES, type DietProfile, type IntoleranceId } from "./profile.js";
import { substanceNamed } from "./profileItems.js";
import { substanceOf } from "./substanceTree.js";

/**
 * Languages of the card. Japanese gives the allergens in the words of the Japanese list, and the sentences around
 * them in English: no other Japanese wording is vouched for.
 */
export const CARD_LANGUAGES = ["en", "de", "fr", "es", "it", "ja"] as const;
export type CardLanguage = (typeof CARD_LANGUAGES)[number];

export type CardLineKind =
  "allergy" | "coeliac" | "intolerance" | "diet" | "avoid" | "own" | "crossContact" | "ask";

export interface CardLine {
  readonly kind: CardLineKind;
  readonly text: string;
}

/** What the card shows to the staff, in their language, gravest first. */
export interface KitchenCardContent {
  readonly language: CardLanguage;
  readonly title: string;
  readonly lines: readonly CardLine[];
  /** Always shown: a help, not a guarantee. */
  readonly note: string;
}

const TEXTS: Readonly<Record<CardLanguage, CardTexts>> = {
  en: CARD_ENGLISH,
  de: CARD_GERMAN,
  fr: CARD_FRENCH,
  es: CARD_SPANISH,
  it: CARD_ITALIAN,
  ja: CARD_ENGLISH,
};

const isAllergen = (id: string): id is AllergenId => id in ALLERGEN_NAMES;

/** In the words of the legal list; the user's own words stay as they were written. */
function allergenName(allergen: string, language: CardLanguage): string {
  const id = substanceOf(allergen)?.id ?? substanceNamed(allergen) ?? allergen;
  if (!isAllergen(id)) return allergen;
  const names = ALLERGEN_NAMES[id];
  return language === "ja" ? (names.ja ?? names.en) : names[language];
}

const isKnown = (text: string): text is IntoleranceId => INTOLERANCES.some((id) => id === text);

const withList = (text: string, names: readonly string[], separator: string): string =>
  text.replace("{list}", () => names.join(separator));

function line(kind: CardLineKind, text: string, names: readonly string[], separator = ", "): CardLine[] {
  return names.length === 0 ? [] : [{ kind, text: withList(text, names, separator) }];
}

function allergyLines(profile: DietProfile, texts: CardTexts, language: CardLanguage): CardLine[] {
  const names = profile.allergies.map((allergy) => allergenName(allergy.allergen, language));
  const grave = profile.allergies.some(
    ({ severity }) => severity === "lifeThreatening" || severity === "unknown",
  );
  return [
    ...line("allergy", texts.allergy, names, "; "),
    ...(grave ? [{ kind: "allergy" as const, text: texts.graveAllergy }] : []),
  ];
}

/** The request about pans and fryers is for people whom a trace can hurt. */
function careLines(profile: DietProfile, texts: CardTexts): CardLine[] {
  if (profile.allergies.length === 0 && !profile.coeliac) return [];
  return [
    { kind: "crossContact", text: texts.crossContact },
    { kind: "ask", text: texts.written },
    { kind: "ask", text: texts.ifUnsure },
  ];
}

/** The card for the kitchen: what the user does not eat, in the kitchen's language. */
export function kitchenCard(profile: DietProfile, language: CardLanguage): KitchenCardContent {
  const texts = TEXTS[language];
  const intolerances = profile.intolerances.map((text) => (isKnown(text) ? texts.intolerances[text] : text));
  return {
    language,
    title: texts.title,
    lines: [
      ...allergyLines(profile, texts, language),
      ...(profile.coeliac ? [{ kind: "coeliac" as const, text: texts.coeliac }] : []),
      ...line("intolerance", texts.intolerance, intolerances),
      ...profile.diets.map((diet): CardLine => ({ kind: "diet", text: texts.diets[diet] })),
      ...line(
        "avoid",
        texts.avoidedGroups,
        profile.avoidedGroups.map((group) => texts.groups[group]),
      ),
      ...line("own", texts.ownWords, profile.ownWords),
      ...careLines(profile, texts),
    ],
    note: texts.help,
  };
}
