import type { DietProfile } from "./profile.js";

/** The sentences that hold whatever the dish. */
export type StandingId =
  "emergency" | "noSmell" | "steam" | "askAndTell" | "inDoubt" | "adrenaline" | "crossContact" | "noDevice";

/** Which standing sentences a profile needs, in order: with an allergy the emergency number comes first. */
export function standingIds(profile: Pick<DietProfile, "allergies" | "coeliac">): StandingId[] {
  if (profile.allergies.length > 0) {
    return [
      "emergency",
      "noSmell",
      "steam",
      "askAndTell",
      "inDoubt",
      "adrenaline",
      "crossContact",
      "noDevice",
    ];
  }
  if (profile.coeliac) return ["noSmell", "askAndTell", "inDoubt", "crossContact", "noDevice"];
  return ["noSmell", "noDevice"];
}
