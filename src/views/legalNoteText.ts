import type { JurisdictionId } from "../diet/jurisdiction.js";
import type { LegalNote } from "../diet/profileItems.js";
import type { Words } from "../text/catalogue.js";

/** What one legal list says of a substance, as a part of a sentence: whether it is on it, under which item. */
export function legalNoteText(
  note: LegalNote,
  jurisdiction: JurisdictionId,
  { text }: Words<"diet" | "you">,
): string {
  const { legal } = text.diet;
  const place = text.you.jurisdictions[jurisdiction];
  if (note.exception !== null) return legal.exempt(place, note.exception);
  if (note.listed === "notListed" || note.itemText === null) return legal.notListed(place);
  const item =
    note.itemNumber === null
      ? legal.unnumbered(note.itemText)
      : legal.item(String(note.itemNumber), note.itemText);
  const force = note.force === "recommended" || note.force === "national" ? [legal[note.force]] : [];
  return [legal[note.listed](place), item, ...force].join(", ");
}
