/**
 * Which substances touch which diet, coeliac disease, intolerance or food group.
 * The nearest rule up the tree of substances counts. `cap` limits the level: a diet that asks how an animal was
 * slaughtered cannot be answered by the word "beef", so the rule caps it at `originUnclear`; "untouched" ends the walk.
 */
import type { FoodGroup } from "../../kernel/groups.js";
import type { Level } from "../level.js";
import type { DietId, IntoleranceId } from "../profile.js";
import type { Provenance } from "../provenance.js";
import type { SubstanceId } from "./substances.js";

export interface SubstanceRule extends Provenance {
  readonly substance: SubstanceId;
  readonly cap: Level | "untouched" | null;
}

const rules = (
  provenance: Provenance,
  ...table: readonly (readonly [SubstanceId, SubstanceRule["cap"]?])[]
): readonly SubstanceRule[] =>
  table.map(([substance, cap]) => ({ substance, cap: cap ?? null, ...provenance }));

const ISO = { source: "ISO 23662:2021 s.4.2, secondary quotation", mark: "SEEN" } as const;
const ISO_OVO = { source: "ISO 23662:2021 s.4.3, secondary quotation", mark: "SEEN" } as const;
const ISO_LACTO = { source: "ISO 23662:2021 s.4.4, secondary quotation", mark: "SEEN" } as const;
const ISO_VEGAN = { source: "ISO 23662:2021 s.4.5, value from memory", mark: "MEMORY" } as const;
const ADDITIVES = { source: "additive lists, secondary quotation", mark: "SEEN" } as const;
const USAGE = { source: "common usage, no legal definition, value from memory", mark: "MEMORY" } as const;
const HALAL = { source: "Codex CAC/GL 24-1997 s.2, 3.1, secondary quotation", mark: "SEEN" } as const;
const HALAL_SCHOOLS = { source: "schools differ on this, value from memory", mark: "MEMORY" } as const;
const KOSHER = { source: "basic rules of kashrut, secondary quotation", mark: "SEEN" } as const;
const KOSHER_MEMORY = { source: "basic rules of kashrut, value from memory", mark: "MEMORY" } as const;
const CODEX_GLUTEN = { source: "CXS 118-1979 s.2.1.1, secondary quotation", mark: "SEEN" } as const;
const CODEX_OATS = {
  source: "CXS 118-1979 footnote 1: oats are tolerated by most but not all",
  mark: "SEEN",
} as const;
const LACTOSE = { source: "Food Safety Authority of Ireland, Lactose-free claims", mark: "SEEN" } as const;
const AGED = {
  source: "aged cheese and butterfat hold little lactose, value from memory",
  mark: "MEMORY",
} as const;
const INTOLERANCE = { source: "intolerance advice, value from memory", mark: "MEMORY" } as const;
const TRADE = { source: "common practice: what the word covers", mark: "common practice" } as const;

const VEGETARIAN = [
  ...rules(ISO, ["meat"], ["fish"], ["crustacean"], ["mollusc"], ["gelatine"], ["animalRennet"], ["insect"]),
  ...rules(ISO, ["eitherOrigin", "originUnclear"]),
  ...rules(ADDITIVES, ["shellac", "originUnclear"]),
];

export const DIET_RULES: Readonly<Record<DietId, readonly SubstanceRule[]>> = {
  eatsFishNoMeat: rules(
    USAGE,
    ["meat"],
    ["gelatine", "originUnclear"],
    ["animalRennet"],
    ["eitherOrigin", "originUnclear"],
  ),
  ovoLactoVegetarian: VEGETARIAN,
  ovoVegetarian: [...VEGETARIAN, ...rules(ISO_OVO, ["milk"])],
  lactoVegetarian: [...VEGETARIAN, ...rules(ISO_LACTO, ["egg"])],
  vegan: [
    ...VEGETARIAN.filter((rule) => rule.substance !== "shellac"),
    ...rules(ISO_VEGAN, ["milk"], ["egg"], ["beeProduct"], ["woolFat"]),
  ],
  halal: [
    ...rules(HALAL, ["pork"], ["blood"], ["alcohol"], ["frog"]),
    ...rules(
      HALAL,
      ["meat", "originUnclear"],
      ["gelatine", "originUnclear"],
      ["animalRennet", "originUnclear"],
      ["insect", "originUnclear"],
      ["eitherOrigin", "originUnclear"],
    ),
    ...rules(HALAL_SCHOOLS, ["crustacean", "originUnclear"], ["mollusc", "originUnclear"]),
  ],
  kosher: [
    ...rules(KOSHER, ["pork"], ["crustacean"], ["mollusc"], ["finlessFish"], ["blood"]),
    ...rules(KOSHER, ["rabbit"], ["horse"], ["frog"], ["insect"]),
    ...rules(
      KOSHER,
      ["meat", "originUnclear"],
      ["gelatine", "originUnclear"],
      ["animalRennet", "originUnclear"],
      ["eitherOrigin", "originUnclear"],
    ),
    ...rules(KOSHER_MEMORY, ["wine", "originUnclear"]),
  ],
  ownList: [],
};

/** Two things that a diet keeps apart although it allows each. */
export interface PairRule extends Provenance {
  readonly id: string;
  readonly diet: DietId;
  readonly substances: readonly [SubstanceId, SubstanceId];
}
export const PAIR_RULES: readonly PairRule[] = [
  { id: "meatWithMilk", diet: "kosher", substances: ["meat", "milk"], ...KOSHER },
];

export const COELIAC_RULES: readonly SubstanceRule[] = [
  ...rules(CODEX_GLUTEN, ["glutenCereal"], ["wheatSyrup", "mayContain"]),
  ...rules(CODEX_OATS, ["oats", "oftenContains"]),
];

export const INTOLERANCE_RULES: Readonly<Record<IntoleranceId, readonly SubstanceRule[]>> = {
  lactose: [
    ...rules(LACTOSE, ["milk"], ["lactose"]),
    ...rules(AGED, ["lowLactoseMilk", "mayContain"], ["lactitol", "untouched"]),
  ],
  fructose: rules(INTOLERANCE, ["fructose"], ["polyol", "mayContain"]),
  sorbitol: rules(INTOLERANCE, ["polyol"], ["lactitol"]),
  histamine: rules(
    INTOLERANCE,
    ["histamine"],
    ["agedCheese", "oftenContains"],
    ["wine", "oftenContains"],
    ["anchovy", "oftenContains"],
    ["fishSauce", "oftenContains"],
  ),
  gluten: rules(INTOLERANCE, ["glutenCereal"], ["wheatSyrup", "mayContain"], ["oats", "mayContain"]),
};

export const GROUP_RULES: Readonly<Record<FoodGroup, readonly SubstanceRule[]>> = {
  meat: rules(TRADE, ["meat"], ["gelatine", "originUnclear"]),
  fish: rules(TRADE, ["fish"]),
  shellfish: rules(TRADE, ["crustacean"], ["mollusc"]),
  dairy: rules(TRADE, ["milk"]),
  egg: rules(TRADE, ["egg"]),
  nut: rules(TRADE, ["treeNut"], ["peanut"]),
  soya: rules(TRADE, ["soya"]),
  alcohol: rules(TRADE, ["alcohol"]),
};

/** The food groups each diet leaves out, for choosing what a sniff is judged for. */
export const DIET_GROUPS: Readonly<Record<DietId, readonly FoodGroup[]>> = {
  eatsFishNoMeat: ["meat"],
  ovoLactoVegetarian: ["meat", "fish", "shellfish"],
  ovoVegetarian: ["meat", "fish", "shellfish", "dairy"],
  lactoVegetarian: ["meat", "fish", "shellfish", "egg"],
  vegan: ["meat", "fish", "shellfish", "dairy", "egg"],
  halal: ["alcohol"],
  kosher: ["shellfish"],
  ownList: [],
};
