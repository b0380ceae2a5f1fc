/** Cautions of the diet station in words. It brings the diet tables along: load it with them, not before. */
import type { Caution } from "../diet/caution.js";
import { substanceOf } from "../diet/substanceTree.js";
import type { Words } from "../text/catalogue.js";
import type { Formats } from "../text/formats.js";
import type { CautionView } from "./cautionsView.js";
import { itemName } from "./profileItemName.js";

type CautionWords = Words<"common" | "plate" | "you">;

/** One caution in words: which word, how sure, what, for which part of the profile, and what was claimed. */
export function dietCautionView(caution: Caution, words: CautionWords): CautionView {
  const { plate } = words.text;
  const language = languageOf(words.formats);
  const trigger = caution.triggers[0]?.word ?? "";
  const row = caution.substance === null ? undefined : substanceOf(caution.substance);
  const note = caution.row?.note ?? null;
  const claims = [...new Set(caution.claims.map(({ word }) => word))];
  const because = [
    plate.matters(itemName(caution.item, words)),
    ...(caution.namesake ? [plate.namesake] : []),
    ...claims.map((word) => plate.claimed(word)),
    ...(note === null ? [] : [note[language]]),
    plate.source(caution.basis.source),
  ];
  return {
    id: caution.id,
    text:
      row === undefined ? plate.ownWordFound(trigger) : plate.caution[caution.level](trigger, row[language]),
    because: because.join(" · "),
  };
}

/** The tables of the diet station are in English and German. */
function languageOf({ locale }: Formats): "en" | "de" {
  return locale.toLowerCase().startsWith("de") ? "de" : "en";
}
