/** What always holds, in words. It brings the legal lists along: load it with the diet tables. */
import { ALLERGEN_LISTS } from "../diet/data/jurisdictions.js";
import type { DietProfile } from "../diet/profile.js";
import { standingIds, type StandingId } from "../diet/standingIds.js";
import type { Words } from "../text/catalogue.js";
import { eitherText } from "../text/formats.js";

/** One sentence of the standing statement, with a stable id. */
export interface StandingLine {
  readonly id: StandingId;
  readonly text: string;
}

type StandingWords = Words<"diet" | "you">;

/** What no nose can tell, and what to do instead; longer with an allergy in the profile. */
export function standingView(profile: DietProfile, words: StandingWords): StandingLine[] {
  return standingIds(profile).map((id) => ({
    id,
    text: id === "emergency" ? emergencyText(profile, words) : words.text.diet.standing[id],
  }));
}

function emergencyText({ jurisdiction }: DietProfile, words: StandingWords): string {
  const { diet: text, you } = words.text;
  const numbers = ALLERGEN_LISTS[jurisdiction].emergency.numbers.map(({ number, country }) =>
    country === null ? number : text.numberIn(number, text.countries[country]),
  );
  const where =
    numbers.length === 0
      ? ""
      : text.emergencyNumbers(you.jurisdictions[jurisdiction], eitherText(numbers, words.formats));
  return text.emergency(where);
}
