/**
 * What a dish can hold that matters to somebody: the vocabulary of every other table here.
 * A child is a kind of its parent; `group` and `ask` come from the nearest ancestor that names them.
 */
import type { FoodGroup } from "../../kernel/groups.js";
import type { QuestionId } from "./questions.js";
import type { Mark } from "../provenance.js";

interface SubstanceShape {
  readonly id: string;
  readonly parent: string | null;
  readonly group?: FoodGroup;
  readonly ask?: QuestionId;
  /** May be chosen as an allergy. */
  readonly allergen?: true;
  readonly en: string;
  readonly de: string;
  readonly source: string;
  readonly mark: Mark;
}

const LISTS = { source: "allergen lists of this folder (jurisdictions)", mark: "SEEN" } as const;
const JAPAN = {
  source: "Japan, recommended items: Osaka Prefecture note, 5 March 2025",
  mark: "SEEN",
} as const;
const HIDDEN = { source: "hidden animal ingredients, secondary quotation", mark: "SEEN" } as const;
const TRADE = { source: "common practice: kitchen and butchery terms", mark: "common practice" } as const;
const MEDICAL = { source: "intolerance advice, value from memory", mark: "MEMORY" } as const;

export const SUBSTANCES = [
  {
    id: "meat",
    parent: null,
    group: "meat",
    ask: "meat",
    allergen: true,
    en: "meat",
    de: "Fleisch",
    ...TRADE,
  },
  { id: "beef", parent: "meat", allergen: true, en: "beef", de: "Rindfleisch", ...JAPAN },
  { id: "veal", parent: "beef", en: "veal", de: "Kalbfleisch", ...TRADE },
  {
    id: "beefFat",
    parent: "beef",
    ask: "fat",
    en: "beef fat (suet, tallow, dripping)",
    de: "Rinderfett (Talg)",
    ...HIDDEN,
  },
  { id: "pork", parent: "meat", allergen: true, en: "pork", de: "Schweinefleisch", ...JAPAN },
  { id: "lard", parent: "pork", ask: "fat", en: "lard (pork fat)", de: "Schweineschmalz", ...HIDDEN },
  { id: "lamb", parent: "meat", en: "lamb or mutton", de: "Lamm- oder Hammelfleisch", ...TRADE },
  { id: "goatMeat", parent: "meat", en: "goat meat", de: "Ziegenfleisch", ...TRADE },
  { id: "poultry", parent: "meat", en: "poultry", de: "Geflügel", ...TRADE },
  { id: "chicken", parent: "poultry", allergen: true, en: "chicken", de: "Hühnerfleisch", ...JAPAN },
  { id: "turkey", parent: "poultry", en: "turkey", de: "Putenfleisch", ...TRADE },
  { id: "duck", parent: "poultry", en: "duck", de: "Entenfleisch", ...TRADE },
  { id: "goose", parent: "poultry", en: "goose", de: "Gänsefleisch", ...TRADE },
  { id: "game", parent: "meat", en: "game", de: "Wildfleisch", ...TRADE },
  { id: "rabbit", parent: "meat", en: "rabbit or hare", de: "Kaninchen- oder Hasenfleisch", ...TRADE },
  { id: "horse", parent: "meat", en: "horse meat", de: "Pferdefleisch", ...TRADE },
  { id: "frog", parent: "meat", en: "frog", de: "Froschfleisch", ...TRADE },
  { id: "blood", parent: "meat", en: "blood", de: "Blut", ...TRADE },
  { id: "meatStock", parent: "meat", ask: "stock", en: "meat stock", de: "Fleischbrühe", ...HIDDEN },
  { id: "animalFat", parent: "meat", ask: "fat", en: "animal fat", de: "tierisches Fett", ...HIDDEN },
  {
    id: "gelatine",
    parent: null,
    group: "meat",
    ask: "gelatine",
    allergen: true,
    en: "gelatine",
    de: "Gelatine",
    ...JAPAN,
  },
  { id: "animalRennet", parent: null, ask: "rennet", en: "animal rennet", de: "tierisches Lab", ...HIDDEN },
  { id: "insect", parent: null, ask: "origin", en: "insect", de: "Insekten", ...HIDDEN },
  { id: "carmine", parent: "insect", en: "carmine (from insects)", de: "Karmin (aus Insekten)", ...HIDDEN },
  {
    id: "shellac",
    parent: "insect",
    en: "shellac (from insects)",
    de: "Schellack (aus Insekten)",
    ...HIDDEN,
  },
  {
    id: "beeProduct",
    parent: null,
    ask: "honey",
    en: "honey or another bee product",
    de: "Honig oder ein anderes Bienenprodukt",
    ...TRADE,
  },
  { id: "woolFat", parent: null, ask: "origin", en: "wool fat", de: "Wollfett", ...HIDDEN },
  {
    id: "eitherOrigin",
    parent: null,
    ask: "origin",
    en: "an additive of plant or animal origin",
    de: "ein Zusatzstoff pflanzlicher oder tierischer Herkunft",
    ...HIDDEN,
  },

  { id: "fish", parent: null, group: "fish", ask: "fish", allergen: true, en: "fish", de: "Fisch", ...LISTS },
  { id: "salmon", parent: "fish", allergen: true, en: "salmon", de: "Lachs", ...JAPAN },
  { id: "salmonRoe", parent: "fish", allergen: true, en: "salmon roe", de: "Lachsrogen", ...JAPAN },
  { id: "mackerel", parent: "fish", allergen: true, en: "mackerel", de: "Makrele", ...JAPAN },
  { id: "anchovy", parent: "fish", ask: "fishSauce", en: "anchovy", de: "Sardellen", ...HIDDEN },
  {
    id: "fishSauce",
    parent: "fish",
    ask: "fishSauce",
    en: "fish sauce or dashi",
    de: "Fischsauce oder Dashi",
    ...HIDDEN,
  },
  {
    id: "finlessFish",
    parent: "fish",
    en: "fish without fins and scales",
    de: "Fisch ohne Flossen und Schuppen",
    ...TRADE,
  },
  {
    id: "isinglass",
    parent: "fish",
    ask: "fining",
    en: "isinglass (fish bladder)",
    de: "Hausenblase (vom Fisch)",
    ...HIDDEN,
  },
  {
    id: "crustacean",
    parent: null,
    group: "shellfish",
    ask: "seafood",
    allergen: true,
    en: "crustaceans",
    de: "Krebstiere",
    ...LISTS,
  },
  { id: "shrimp", parent: "crustacean", allergen: true, en: "shrimp or prawn", de: "Garnelen", ...LISTS },
  { id: "crab", parent: "crustacean", allergen: true, en: "crab", de: "Krabbe", ...LISTS },
  {
    id: "mollusc",
    parent: null,
    group: "shellfish",
    ask: "seafood",
    allergen: true,
    en: "molluscs",
    de: "Weichtiere",
    ...LISTS,
  },
  { id: "squid", parent: "mollusc", allergen: true, en: "squid", de: "Tintenfisch", ...JAPAN },
  { id: "abalone", parent: "mollusc", allergen: true, en: "abalone", de: "Abalone (Meerohr)", ...JAPAN },
  { id: "snail", parent: "mollusc", en: "snails", de: "Schnecken", ...LISTS },

  {
    id: "milk",
    parent: null,
    group: "dairy",
    ask: "dairy",
    allergen: true,
    en: "milk",
    de: "Milch",
    ...LISTS,
  },
  { id: "lactose", parent: "milk", en: "lactose", de: "Laktose", ...LISTS },
  {
    id: "lowLactoseMilk",
    parent: "milk",
    en: "milk with little lactose (aged cheese, ghee, milk protein)",
    de: "Milch mit wenig Laktose (gereifter Käse, Butterschmalz, Milcheiweiß)",
    ...MEDICAL,
  },
  { id: "agedCheese", parent: "lowLactoseMilk", en: "aged cheese", de: "gereifter Käse", ...MEDICAL },
  {
    id: "lactitol",
    parent: "milk",
    en: "lactitol (made from milk sugar)",
    de: "Lactit (aus Milchzucker)",
    ...LISTS,
  },
  { id: "egg", parent: null, group: "egg", ask: "egg", allergen: true, en: "egg", de: "Ei", ...LISTS },

  {
    id: "glutenCereal",
    parent: null,
    ask: "flour",
    allergen: true,
    en: "cereals with gluten",
    de: "glutenhaltiges Getreide",
    ...LISTS,
  },
  { id: "wheat", parent: "glutenCereal", allergen: true, en: "wheat", de: "Weizen", ...LISTS },
  {
    id: "wheatSyrup",
    parent: "wheat",
    en: "glucose syrup or maltodextrin that may be from wheat",
    de: "Glukosesirup oder Maltodextrin, vielleicht aus Weizen",
    ...LISTS,
  },
  { id: "rye", parent: "glutenCereal", allergen: true, en: "rye", de: "Roggen", ...LISTS },
  { id: "barley", parent: "glutenCereal", allergen: true, en: "barley", de: "Gerste", ...LISTS },
  { id: "oats", parent: "glutenCereal", allergen: true, en: "oats", de: "Hafer", ...LISTS },
  {
    id: "buckwheat",
    parent: null,
    ask: "flour",
    allergen: true,
    en: "buckwheat",
    de: "Buchweizen",
    ...LISTS,
  },

  {
    id: "peanut",
    parent: null,
    group: "nut",
    ask: "nuts",
    allergen: true,
    en: "peanuts",
    de: "Erdnüsse",
    ...LISTS,
  },
  {
    id: "refinedPeanutOil",
    parent: "peanut",
    ask: "fat",
    en: "refined peanut oil",
    de: "raffiniertes Erdnussöl",
    ...LISTS,
  },
  { id: "soya", parent: null, group: "soya", ask: "soya", allergen: true, en: "soya", de: "Soja", ...LISTS },
  {
    id: "refinedSoyaOil",
    parent: "soya",
    ask: "fat",
    en: "refined soya oil",
    de: "raffiniertes Sojaöl",
    ...LISTS,
  },
  {
    id: "soyaTocopherol",
    parent: "soya",
    en: "tocopherols, often from soya",
    de: "Tocopherole, oft aus Soja",
    ...LISTS,
  },
  {
    id: "treeNut",
    parent: null,
    group: "nut",
    ask: "nuts",
    allergen: true,
    en: "tree nuts",
    de: "Schalenfrüchte (Nüsse)",
    ...LISTS,
  },
  { id: "almond", parent: "treeNut", allergen: true, en: "almonds", de: "Mandeln", ...LISTS },
  { id: "hazelnut", parent: "treeNut", allergen: true, en: "hazelnuts", de: "Haselnüsse", ...LISTS },
  { id: "walnut", parent: "treeNut", allergen: true, en: "walnuts", de: "Walnüsse", ...LISTS },
  { id: "cashew", parent: "treeNut", allergen: true, en: "cashews", de: "Cashewnüsse", ...LISTS },
  { id: "pecan", parent: "treeNut", allergen: true, en: "pecans", de: "Pekannüsse", ...LISTS },
  { id: "brazilNut", parent: "treeNut", allergen: true, en: "Brazil nuts", de: "Paranüsse", ...LISTS },
  { id: "pistachio", parent: "treeNut", allergen: true, en: "pistachios", de: "Pistazien", ...LISTS },
  {
    id: "macadamia",
    parent: "treeNut",
    allergen: true,
    en: "macadamia nuts",
    de: "Macadamianüsse",
    ...LISTS,
  },
  { id: "pineNut", parent: "treeNut", allergen: true, en: "pine nuts", de: "Pinienkerne", ...LISTS },
  { id: "coconut", parent: null, ask: "nuts", allergen: true, en: "coconut", de: "Kokosnuss", ...LISTS },
  {
    id: "chestnut",
    parent: null,
    ask: "nuts",
    allergen: true,
    en: "chestnuts",
    de: "Esskastanien",
    ...LISTS,
  },
  { id: "celery", parent: null, ask: "spices", allergen: true, en: "celery", de: "Sellerie", ...LISTS },
  { id: "mustard", parent: null, ask: "spices", allergen: true, en: "mustard", de: "Senf", ...LISTS },
  { id: "sesame", parent: null, ask: "nuts", allergen: true, en: "sesame", de: "Sesam", ...LISTS },
  {
    id: "sulphites",
    parent: null,
    ask: "sulphites",
    allergen: true,
    en: "sulphites",
    de: "Sulfite",
    ...LISTS,
  },
  { id: "lupin", parent: null, ask: "flour", allergen: true, en: "lupin", de: "Lupinen", ...LISTS },

  { id: "orange", parent: null, ask: "fruit", allergen: true, en: "orange", de: "Orange", ...JAPAN },
  { id: "kiwi", parent: null, ask: "fruit", allergen: true, en: "kiwi fruit", de: "Kiwi", ...JAPAN },
  { id: "banana", parent: null, ask: "fruit", allergen: true, en: "banana", de: "Banane", ...JAPAN },
  { id: "peach", parent: null, ask: "fruit", allergen: true, en: "peach", de: "Pfirsich", ...JAPAN },
  { id: "yam", parent: null, ask: "fruit", allergen: true, en: "yam", de: "Yamswurzel", ...JAPAN },
  { id: "apple", parent: null, ask: "fruit", allergen: true, en: "apple", de: "Apfel", ...JAPAN },

  { id: "alcohol", parent: null, group: "alcohol", ask: "alcohol", en: "alcohol", de: "Alkohol", ...TRADE },
  { id: "wine", parent: "alcohol", en: "wine", de: "Wein", ...TRADE },
  { id: "fructose", parent: null, ask: "sugar", en: "much fructose", de: "viel Fruktose", ...MEDICAL },
  {
    id: "polyol",
    parent: null,
    ask: "sugar",
    en: "sorbitol or similar sugar alcohols",
    de: "Sorbit oder ähnliche Zuckeralkohole",
    ...MEDICAL,
  },
  { id: "histamine", parent: null, ask: "aged", en: "much histamine", de: "viel Histamin", ...MEDICAL },
] as const satisfies readonly SubstanceShape[];

export type SubstanceId = (typeof SUBSTANCES)[number]["id"];

/** Substances that may be chosen as an allergy. */
export type AllergenId = Extract<(typeof SUBSTANCES)[number], { readonly allergen: true }>["id"];
