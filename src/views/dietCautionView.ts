/** Cautions of the diet station in words. It brings the diet tables along: load it with them, not before. */
import type { Caution } from "../diet/caution.js";
import { claimLimitsFor } from "../diet/claimLimitsFor.js";
import type { JurisdictionId } from "../diet/jurisdiction.js";
import { substanceOf } from "../diet/substanceTree.js";
import type { Words } from "../text/catalogue.js";
import type { CautionView } from "./cautionsView.js";
import { legalNoteText } from "./legalNoteText.js";
import { itemName } from "./profileItemName.js";
import { sourceText } from "./sourceText.js";
import { tableLanguage } from "./tableLanguage.js";

type CautionWords = Words<"common" | "diet" | "plate" | "you">;

/** One caution in words: which word, how sure, what, for which part of the profile, and what was claimed. */
export function dietCautionView(
  caution: Caution,
  jurisdiction: JurisdictionId,
  words: CautionWords,
): CautionView {
  const { plate } = words.text;
  const language = tableLanguage(words.formats);
  const trigger = caution.triggers[0]?.word ?? "";
  const row = caution.substance === null ? undefined : substanceOf(caution.substance);
  const note = caution.row?.note ?? null;
  const { legal } = caution.basis;
  const because = [
    plate.matters(itemName(caution.item, words)),
    ...(caution.readAs === null ? [] : [plate.readAs(caution.readAs)]),
    ...(caution.namesake ? [plate.namesake] : []),
    ...claimLines(caution, jurisdiction, words),
    ...(note === null ? [] : [note[language]]),
    ...(legal === null ? [] : [legalNoteText(legal, jurisdiction, words)]),
    plate.source(sourceText(caution.basis.source, words.formats)),
  ];
  return {
    id: caution.id,
    text:
      row === undefined ? plate.ownWordFound(trigger) : plate.caution[caution.level](trigger, row[language]),
    because: because.join(" · "),
  };
}

/** All of them, in their order. A reason that several give one after the other stands once, below the last of them. */
export function dietCautionViews(
  cautions: readonly Caution[],
  jurisdiction: JurisdictionId,
  words: CautionWords,
): CautionView[] {
  const views = cautions.map((caution) => dietCautionView(caution, jurisdiction, words));
  return views.map((view, i) => (view.because === views[i + 1]?.because ? { ...view, because: null } : view));
}

/** What was claimed, and what a label may mean by it. */
function claimLines({ claims, item }: Caution, jurisdiction: JurisdictionId, words: CautionWords): string[] {
  const { plate, diet } = words.text;
  if (claims.length === 0) return [];
  const language = tableLanguage(words.formats);
  const grave = item.kind === "allergy" || item.kind === "coeliac";
  return [
    ...[...new Set(claims.map(({ word }) => word))].map((word) => plate.claimed(word)),
    ...(grave ? [diet.noTraces] : []),
    ...claimLimitsFor(item, jurisdiction).map(({ claim, limit }) => diet.claimLimit(claim, limit[language])),
  ];
}
