/**
 * What a menu claims about a dish. A claim is never knowledge: it annotates, or weakens what is no allergy and no
 * coeliac disease, and never takes a caution away.
 */
import type { DietId } from "../profile.js";
import type { Provenance } from "../provenance.js";
import type { SubstanceId } from "./substances.js";

export interface ClaimRow extends Provenance {
  readonly id: string;
  readonly en: readonly string[];
  readonly de: readonly string[];
  /** Substances, with all their kinds, that the claim says are not there. */
  readonly covers: readonly SubstanceId[];
  /** A religious claim says nothing to any other diet. */
  readonly onlyForDiet: DietId | null;
}

const FLESH: readonly SubstanceId[] = [
  "meat",
  "fish",
  "crustacean",
  "mollusc",
  "gelatine",
  "animalRennet",
  "insect",
];
const ANIMAL: readonly SubstanceId[] = [...FLESH, "eitherOrigin", "milk", "egg", "beeProduct", "woolFat"];

const NO_EU_LAW = {
  source:
    "no binding EU definition, Reg. (EU) No 1169/2011 Art. 36(3)(b); such a mark is no allergen statement, ISO 23662:2021 s.1",
  mark: "SEEN",
} as const;
const MENU = { source: "common practice: words of menus", mark: "common practice" } as const;
const CERTIFICATE = {
  source: "certificates of religious authorities decide, secondary quotation",
  mark: "SEEN",
} as const;

export const CLAIMS: readonly ClaimRow[] = [
  {
    id: "vegan",
    en: ["vegan", "plant based", "plantbased", "vg", "ve"],
    de: ["vegan", "rein pflanzlich", "pflanzlich", "pflanzenbasiert"],
    covers: ANIMAL,
    onlyForDiet: null,
    ...NO_EU_LAW,
  },
  {
    id: "vegetarian",
    en: ["vegetarian", "veggie", "v"],
    de: ["vegetarisch", "vegi"],
    covers: [...FLESH, "eitherOrigin"],
    onlyForDiet: null,
    ...NO_EU_LAW,
  },
  {
    id: "meatless",
    en: ["meatless", "pescatarian", "pescetarian", "sin carne"],
    de: ["fleischlos", "pescetarisch"],
    covers: ["meat"],
    onlyForDiet: null,
    ...MENU,
  },
  { id: "eggless", en: ["eggless"], de: ["eilos"], covers: ["egg"], onlyForDiet: null, ...MENU },
  {
    id: "flourless",
    en: ["flourless"],
    de: ["mehllos"],
    covers: ["glutenCereal"],
    onlyForDiet: null,
    ...MENU,
  },
  {
    id: "alcoholless",
    en: ["virgin", "mocktail"],
    de: ["alkohollos"],
    covers: ["alcohol"],
    onlyForDiet: null,
    ...MENU,
  },
  {
    id: "halal",
    en: ["halal"],
    de: ["halal", "helal"],
    covers: [
      "meat",
      "gelatine",
      "animalRennet",
      "alcohol",
      "insect",
      "eitherOrigin",
      "crustacean",
      "mollusc",
    ],
    onlyForDiet: "halal",
    ...CERTIFICATE,
  },
  {
    id: "kosher",
    en: ["kosher", "pareve", "parve"],
    de: ["koscher", "parwe"],
    covers: [
      "meat",
      "fish",
      "crustacean",
      "mollusc",
      "gelatine",
      "animalRennet",
      "alcohol",
      "insect",
      "eitherOrigin",
      "milk",
    ],
    onlyForDiet: "kosher",
    ...CERTIFICATE,
  },
];

/** Where one of these stands beside a claim, the dish on the table need not be that one. */
export const CONDITIONAL_WORDS: readonly string[] = [
  "option",
  "optional",
  "request",
  "available",
  "possible",
  "wunsch",
  "möglich",
  "auch",
  "erhältlich",
  "wahlweise",
  "bestellbar",
  "not",
  "non",
  "nicht",
  "nie",
];
