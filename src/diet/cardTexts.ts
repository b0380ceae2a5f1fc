/** The shape of the kitchen card's texts in one language. The texts are in `data/card/`. */
import type { FoodGroup } from "../kernel/groups.js";
import type { DietId, IntoleranceId } from "./profile.js";
import type { Provenance } from "./provenance.js";

/** `{list}` in a text is where the names go. */
export interface CardTexts extends Provenance {
  readonly title: string;
  readonly diets: Readonly<Record<DietId, string>>;
  readonly groups: Readonly<Record<FoodGroup, string>>;
  readonly avoidedGroups: string;
  readonly allergy: string;
  /** Put under the allergies if one of them is life-threatening or unknown. */
  readonly graveAllergy: string;
  readonly coeliac: string;
  readonly intolerances: Readonly<Record<IntoleranceId, string>>;
  readonly intolerance: string;
  readonly ownWords: string;
  readonly crossContact: string;
  readonly written: string;
  readonly ifUnsure: string;
  readonly help: string;
}
