/** What the cautions say to somebody who avoids something, in short. */
import type { Caution } from "../../src/diet/caution.js";
import { cautionsFor } from "../../src/diet/cautionsFor.js";
import { emptyProfile, type DietId, type DietProfile } from "../../src/diet/profile.js";

export const base = emptyProfile("EU");
export const allergy = (...allergens: string[]): DietProfile => ({
  ...base,
  allergies: allergens.map((allergen) => ({ allergen, severity: "unknown", note: "" })),
});
export const diet = (...diets: DietId[]): DietProfile => ({ ...base, diets });

export const short = (cautions: readonly Caution[]): string[] =>
  cautions.map(
    ({ level, substance, triggers }) => `${level} ${substance ?? "own"} <${triggers[0]?.word ?? ""}>`,
  );
export const seen = (text: string, profile: DietProfile, claims: readonly string[] = []): string[] =>
  short(cautionsFor({ text, profile, claims }));
/** Strongest level for one profile item; "none" if the list does not touch it. */
export const levelOf = (text: string, profile: DietProfile, claims: readonly string[] = []): string =>
  cautionsFor({ text, profile, claims })[0]?.level ?? "none";
