/** Cautions of the diet station in words. It brings the diet tables along: load it with them, not before. */
import type { Caution } from "../diet/caution.js";
import { QUESTIONS } from "../diet/data/questions.js";
import { substanceOf } from "../diet/substanceTree.js";
import type { Words } from "../text/catalogue.js";
import type { Formats } from "../text/formats.js";
import type { CautionView } from "./cautionsView.js";
import { itemName } from "./profileItemName.js";

/** Questions for the kitchen that are shown at once. */
export const MOST_QUESTIONS = 3;

type CautionWords = Words<"common" | "plate" | "you">;

/** One caution in words: which word, how sure, what, for which part of the profile, and what was claimed. */
export function dietCautionView(caution: Caution, words: CautionWords): CautionView {
  const { plate } = words.text;
  const language = languageOf(words.formats);
  const trigger = caution.triggers[0]?.word ?? "";
  const row = caution.substance === null ? undefined : substanceOf(caution.substance);
  const claims = [...new Set(caution.claims.map(({ word }) => word))];
  const because = [
    plate.matters(itemName(caution.item, words)),
    ...(caution.namesake ? [plate.namesake] : []),
    ...claims.map((word) => plate.claimed(word)),
    ...(caution.row?.note == null ? [] : [caution.row.note[language]]),
    plate.source(caution.basis.source),
  ];
  return {
    id: caution.id,
    text:
      row === undefined ? plate.ownWordFound(trigger) : plate.caution[caution.level](trigger, row[language]),
    because: because.join(" · "),
  };
}

/** The questions that the cautions call for, gravest first, each once. */
export function kitchenQuestions(cautions: readonly Caution[], formats: Formats): string[] {
  const language = languageOf(formats);
  const asks = [...new Set(cautions.map(({ ask }) => ask))];
  return asks
    .flatMap((ask) => {
      const question = QUESTIONS.find(({ id }) => id === ask);
      return question === undefined ? [] : [question[language]];
    })
    .slice(0, MOST_QUESTIONS);
}

/** The tables of the diet station are in English and German. */
function languageOf({ locale }: Formats): "en" | "de" {
  return locale.toLowerCase().startsWith("de") ? "de" : "en";
}
