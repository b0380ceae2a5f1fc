/** A meal as it is remembered: what was served, claimed, found, what it turned out to be, how it felt after. */
import type { GroupTruths } from "../kernel/groups.js";
import type { FindingSnapshot } from "./findingSnapshot.js";

/** What became of the plate. */
export const MEAL_OUTCOMES = ["eaten", "partlyEaten", "sentBack", "notEaten"] as const;
export type MealOutcome = (typeof MEAL_OUTCOMES)[number];

/** Who said what was on the plate. */
export const TRUTH_SOURCES = ["kitchen", "label", "other"] as const;
export type TruthSource = (typeof TRUTH_SOURCES)[number];

/** What the plate turned out to hold. A group that is not named is unknown. */
export interface MealTruth {
  readonly groups: GroupTruths;
  readonly source: TruthSource;
  /** ISO 8601 instant at which it became known. */
  readonly knownAt: string;
  readonly note: string;
}

/** 0 nothing felt, 1 mild, 2 moderate, 3 severe. */
export type Severity = 0 | 1 | 2 | 3;

/** How the person felt after the meal. */
export interface MealReaction {
  /** From the meal to the first symptom. */
  readonly onsetMs?: number | undefined;
  readonly symptoms: readonly string[];
  readonly severity: Severity;
  readonly note: string;
}

/** One caution as it was shown, so that a later knowledge base does not change what was read at the table. */
export interface CautionSnapshot {
  readonly id: string;
  readonly text: string;
}

/** One meal. Every date is an ISO 8601 instant. */
export interface Meal {
  readonly format: "nidor-meal/1";
  readonly id: string;
  readonly at: string;
  readonly dish: string;
  readonly place: string;
  readonly note: string;
  /** What was said about the dish before it was eaten, such as "menu says vegetarian". */
  readonly claims: readonly string[];
  readonly photoIds: readonly string[];
  readonly sniffId?: string | undefined;
  readonly finding?: FindingSnapshot | undefined;
  readonly noseId?: string | undefined;
  /** null until the person says what became of it. */
  readonly outcome: MealOutcome | null;
  readonly truth: MealTruth | null;
  readonly reaction: MealReaction | null;
  readonly cautions: readonly CautionSnapshot[];
  readonly createdAt: string;
  readonly changedAt: string;
  /** Set while a deletion can still be undone. */
  readonly deletedAt?: string | undefined;
}

/** A meal with nothing in it yet but when and where it was made. */
export function newMeal(id: string, at: string): Meal {
  return {
    format: "nidor-meal/1",
    id,
    at,
    dish: "",
    place: "",
    note: "",
    claims: [],
    photoIds: [],
    outcome: null,
    truth: null,
    reaction: null,
    cautions: [],
    createdAt: at,
    changedAt: at,
  };
}
