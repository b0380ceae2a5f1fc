import { ALLERGEN_LISTS } from "./data/jurisdictions.js";
import type { SubstanceId } from "./data/substances.js";
import type { JurisdictionId, ListException, ListItem } from "./jurisdiction.js";
import { isKindOf } from "./substanceTree.js";

/** What one legal list says of one substance. */
export interface LegalStanding {
  /** `partly`: the list names some kinds of it only. */
  readonly listed: "listed" | "partly" | "notListed";
  /** The item that covers it, the binding one first; undefined if none does. */
  readonly item: ListItem | undefined;
  /** The exception that takes it out of the duty to declare; the substance is still made from the allergen. */
  readonly exception: ListException | undefined;
}

const covers = (item: ListItem, substance: SubstanceId): boolean =>
  item.covers.some((covered) => isKindOf(substance, covered)) &&
  !(item.notCovered ?? []).some((left) => isKindOf(substance, left));

const namesAKindOf = (item: ListItem, substance: SubstanceId): boolean =>
  item.covers.some((covered) => isKindOf(covered, substance));

/** Must a kitchen or label under this list name the substance? The order of items is the order of force. */
export function legalStanding(jurisdiction: JurisdictionId, substance: SubstanceId): LegalStanding {
  const items = ALLERGEN_LISTS[jurisdiction].items;
  const whole = items.find((item) => covers(item, substance));
  const part = items.find((item) => namesAKindOf(item, substance));
  const exception = whole?.exceptions?.find((out) => out.substances.some((id) => isKindOf(substance, id)));
  return {
    listed: whole !== undefined ? "listed" : part !== undefined ? "partly" : "notListed",
    item: whole ?? part,
    exception,
  };
}
