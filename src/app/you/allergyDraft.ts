/** What stands in the form of an allergy when it opens. */
import type { Allergy } from "../../diet/profile.js";
import type { AllergyDraft } from "../../views/allergiesView.js";
import type { YouTables } from "./useTables.js";

/** Nobody has said yet how serious it is: that is taken as the worst. */
const NEW_ALLERGY: AllergyDraft = { choice: "", own: "", severity: "unknown", note: "", isNew: true };

/** The draft of one that is kept, or of a new one. */
export function allergyDraft(
  allergy: Allergy | undefined,
  { isKnownAllergen, OWN_ALLERGEN }: Pick<YouTables, "isKnownAllergen" | "OWN_ALLERGEN">,
): AllergyDraft {
  if (allergy === undefined) return NEW_ALLERGY;
  const { allergen, severity, note } = allergy;
  return isKnownAllergen(allergen)
    ? { choice: allergen, own: "", severity, note, isNew: false }
    : { choice: OWN_ALLERGEN, own: allergen, severity, note, isNew: false };
}
