/** What the app says about diets, in one language. `words.en.ts` and `words.de.ts` fill it in. */
import type { Caution, ClaimNote } from "./caution.js";
import type { QuestionId } from "./data/questions.js";
import type { SubstanceId } from "./data/substances.js";
import type { JurisdictionId } from "./jurisdiction.js";
import type { Level } from "./level.js";
import type { DietId, DietProfile, IntoleranceId, Severity } from "./profile.js";
import type { FoodGroup } from "../kernel/groups.js";

/** One sentence of the standing statement, with a stable id. */
export interface StandingLine {
  readonly id: StandingId;
  readonly text: string;
}

export const STANDING_IDS = [
  "emergency",
  "noSmell",
  "steam",
  "askAndTell",
  "inDoubt",
  "adrenaline",
  "crossContact",
  "noDevice",
] as const;
export type StandingId = (typeof STANDING_IDS)[number];

export interface DietWords {
  readonly levels: Readonly<Record<Level, string>>;
  readonly diets: Readonly<Record<DietId, string>>;
  readonly groups: Readonly<Record<FoodGroup, string>>;
  readonly intolerances: Readonly<Record<IntoleranceId, string>>;
  readonly severities: Readonly<Record<Severity, string>>;
  readonly jurisdictions: Readonly<Record<JurisdictionId, string>>;
  /** "pork", "milk". */
  readonly substance: (id: SubstanceId) => string;
  /** The profile item a caution touches: "your milk allergy". */
  readonly item: (item: Caution["item"]) => string;
  /** One sentence: which word says what. */
  readonly caution: (caution: Caution) => string;
  /** One sentence per claim: claimed, not known. */
  readonly claim: (claim: ClaimNote, item: Caution["item"]) => string;
  /** What the legal list says, or null where no allergy is touched. */
  readonly legal: (caution: Caution, jurisdiction: JurisdictionId) => string | null;
  /** What a label may mean by "gluten-free" or "lactose-free", for coeliac disease and lactose intolerance. */
  readonly claimLimits: (item: Caution["item"], jurisdiction: JurisdictionId) => readonly string[];
  /** Name and date of a legal list, and when it was last checked. */
  readonly list: (jurisdiction: JurisdictionId) => string;
  /** The row's own remark, or null. */
  readonly note: (caution: Caution) => string | null;
  /** Where it was read, and how far to trust it. */
  readonly provenance: (caution: Caution) => string;
  readonly question: (id: QuestionId) => string;
  /** What no nose can tell, and what to do instead; longer with an allergy in the profile. */
  readonly standing: (profile: DietProfile) => readonly StandingLine[];
  /** Shown where the list of cautions is empty: nothing recognised says nothing about the dish. */
  readonly nothingRecognised: string;
  readonly help: string;
}
