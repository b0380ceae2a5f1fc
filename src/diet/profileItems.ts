import {
  COELIAC_RULES,
  DIET_RULES,
  GROUP_RULES,
  INTOLERANCE_RULES,
  type SubstanceRule,
} from "./data/dietRules.js";
import type { SubstanceId } from "./data/substances.js";
import { analyzeWord } from "./analyzeWord.js";
import type { ListForce } from "./jurisdiction.js";
import { legalStanding } from "./legalStanding.js";
import type { Level } from "./level.js";
import { LEXICON } from "./lexicon.js";
import { INTOLERANCES, type DietProfile, type IntoleranceId } from "./profile.js";
import type { Provenance } from "./provenance.js";
import { isKindOf, lineageOf, substanceOf } from "./substanceTree.js";
import { wordsOf } from "./wordsOf.js";

export type ItemKind = "allergy" | "coeliac" | "intolerance" | "diet" | "group" | "own";

/** What the legal list of the user's jurisdiction says of a substance. */
export interface LegalNote {
  readonly listed: "listed" | "partly" | "notListed";
  readonly itemNumber: number | null;
  readonly itemText: string | null;
  readonly force: ListForce | null;
  /** The exception that frees it from being declared, in the words of the list. */
  readonly exception: string | null;
}

/** Why a substance touches a profile item, and how far. */
export interface Touch extends Provenance {
  readonly cap: Level | null;
  readonly legal: LegalNote | null;
}

/** One thing of a profile that a word can touch. */
export interface ProfileItem {
  /** Stable: "allergy:milk", "coeliac", "diet:vegan", "own:coriander". */
  readonly key: string;
  readonly kind: ItemKind;
  readonly value: string;
  /** Allergy and coeliac disease: a claim annotates and never weakens. */
  readonly strict: boolean;
  /** Substances the item itself is about, so that "lactose-free" speaks to lactose intolerance. */
  readonly about: readonly SubstanceId[];
  /** Words to look for as they are: the user's own. */
  readonly ownWords: string | null;
  readonly touch: (substance: SubstanceId) => Touch | null;
}

const touchBy =
  (rules: readonly SubstanceRule[]) =>
  (substance: SubstanceId): Touch | null => {
    for (const step of lineageOf(substance)) {
      const rule = rules.find((each) => each.substance === step);
      if (rule === undefined) continue;
      if (rule.cap === "untouched") return null;
      return { cap: rule.cap, source: rule.source, mark: rule.mark, legal: null };
    }
    return null;
  };

const allergyTouch =
  (allergen: SubstanceId, profile: DietProfile) =>
  (substance: SubstanceId): Touch | null => {
    const kind = isKindOf(substance, allergen);
    // "Nuts" may be the hazelnuts somebody reacts to.
    if (!kind && !isKindOf(allergen, substance)) return null;
    const standing = legalStanding(profile.jurisdiction, substance);
    const item = standing.item;
    return {
      cap: kind && standing.exception === undefined ? null : "mayContain",
      source: standing.exception?.source ?? item?.source ?? "not in the legal list of this jurisdiction",
      mark: standing.exception?.mark ?? item?.mark ?? "SEEN",
      legal: {
        listed: standing.listed,
        itemNumber: item?.n ?? null,
        itemText: item?.text ?? null,
        force: item?.force ?? null,
        exception: standing.exception?.text ?? null,
      },
    };
  };

/** The substance a user's own word names, if the tables have one: "Milch", "pork". Dishes name none. */
export function substanceNamed(text: string): SubstanceId | undefined {
  const known = substanceOf(text);
  if (known !== undefined) return known.id;
  const words = wordsOf(text);
  const [word] = words;
  if (word === undefined || words.length > 1) return undefined;
  const rows = analyzeWord(word.folded, LEXICON).map((id) => LEXICON.rows.get(id));
  const named = rows.filter((row) => row?.kind === "ingredient" && row.contains.length === 1);
  return rows.length === 1 ? named[0]?.contains[0] : undefined;
}

const OWN: Provenance = { source: "the user's own word", mark: "common practice" };

function ownItem(kind: "allergy" | "intolerance" | "own", text: string, profile: DietProfile): ProfileItem {
  const substance = substanceNamed(text);
  const base = { key: `${kind}:${text}`, kind, value: text, strict: kind === "allergy", ownWords: text };
  if (substance === undefined) return { ...base, about: [], touch: () => null };
  if (kind === "allergy") return { ...base, about: [substance], touch: allergyTouch(substance, profile) };
  return { ...base, about: [substance], touch: touchBy([{ substance, cap: null, ...OWN }]) };
}

function allergyItem(allergen: string, profile: DietProfile): ProfileItem {
  const known = substanceOf(allergen);
  if (known === undefined) return ownItem("allergy", allergen, profile);
  return {
    key: `allergy:${known.id}`,
    kind: "allergy",
    value: known.id,
    strict: true,
    about: [known.id],
    ownWords: null,
    touch: allergyTouch(known.id, profile),
  };
}

const isKnownIntolerance = (text: string): text is IntoleranceId => INTOLERANCES.some((id) => id === text);

const ABOUT: Readonly<Record<IntoleranceId, readonly SubstanceId[]>> = {
  lactose: ["lactose"],
  fructose: ["fructose"],
  sorbitol: ["polyol"],
  histamine: ["histamine"],
  gluten: ["glutenCereal"],
};

const ruled = (
  kind: ItemKind,
  value: string,
  rules: readonly SubstanceRule[],
  about: readonly SubstanceId[] = [],
): ProfileItem => ({
  key: kind === "coeliac" ? "coeliac" : `${kind}:${value}`,
  kind,
  value,
  strict: kind === "coeliac",
  about,
  ownWords: null,
  touch: touchBy(rules),
});

/** Everything in a profile that a word on a menu can touch. Each stays apart: one word may touch several. */
export function profileItems(profile: DietProfile): ProfileItem[] {
  const items = [
    ...profile.allergies.map((allergy) => allergyItem(allergy.allergen, profile)),
    ...(profile.coeliac ? [ruled("coeliac", "coeliac", COELIAC_RULES, ["glutenCereal"])] : []),
    ...profile.intolerances.map((text) =>
      isKnownIntolerance(text)
        ? ruled("intolerance", text, INTOLERANCE_RULES[text], ABOUT[text])
        : ownItem("intolerance", text, profile),
    ),
    ...profile.diets.map((diet) => ruled("diet", diet, DIET_RULES[diet])),
    ...profile.avoidedGroups.map((group) => ruled("group", group, GROUP_RULES[group])),
    ...profile.ownWords.map((text) => ownItem("own", text, profile)),
  ];
  return items.filter((item, i) => items.findIndex((other) => other.key === item.key) === i);
}
