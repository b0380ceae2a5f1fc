/** What one person does not eat, and why. Allergy, intolerance and coeliac disease are three things: never merged. */
import type { FoodGroup } from "../kernel/groups.js";
import type { JurisdictionId } from "./jurisdiction.js";

/** Diets by name. The vegetarian kinds are those of ISO 23662:2021. */
export const DIETS = [
  "eatsFishNoMeat",
  "ovoLactoVegetarian",
  "ovoVegetarian",
  "lactoVegetarian",
  "vegan",
  "halal",
  "kosher",
  "ownList",
] as const;
export type DietId = (typeof DIETS)[number];

/** Intolerances with a table behind them; any other text is taken as the user's own word. */
export const INTOLERANCES = ["lactose", "fructose", "sorbitol", "histamine", "gluten"] as const;
export type IntoleranceId = (typeof INTOLERANCES)[number];

/** As the person was told by a doctor; `unknown` is treated as the worst. */
export const SEVERITIES = ["mild", "serious", "lifeThreatening", "unknown"] as const;
export type Severity = (typeof SEVERITIES)[number];

export interface Allergy {
  /** An `AllergenId` of `data/substances.ts`, or the user's own word for anything else. */
  readonly allergen: string;
  readonly severity: Severity;
  readonly note: string;
}

export interface DietProfile {
  readonly diets: readonly DietId[];
  readonly avoidedGroups: readonly FoodGroup[];
  readonly allergies: readonly Allergy[];
  /** `IntoleranceId` or free text. */
  readonly intolerances: readonly string[];
  readonly coeliac: boolean;
  /** Words the user looks for on any menu, in the user's own spelling. */
  readonly ownWords: readonly string[];
  /** Whose allergen list the kitchen works under. */
  readonly jurisdiction: JurisdictionId;
}

export const emptyProfile = (jurisdiction: JurisdictionId): DietProfile => ({
  diets: [],
  avoidedGroups: [],
  allergies: [],
  intolerances: [],
  coeliac: false,
  ownWords: [],
  jurisdiction,
});
