import type { DietProfile } from "./profile.js";
import type { StandingId } from "./words.js";

/** Which standing sentences a profile needs, in order: with an allergy the emergency number comes first. */
export function standingIds(profile: DietProfile): StandingId[] {
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
