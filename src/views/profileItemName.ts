import type { Caution } from "../diet/caution.js";
import type { DietId } from "../diet/profile.js";
import { substanceOf } from "../diet/substanceTree.js";
import type { Words } from "../text/catalogue.js";
import { groupName } from "./groupName.js";
import { tableLanguage } from "./tableLanguage.js";

/** The part of the profile that a caution speaks to, such as "egg allergy". */
export function itemName(item: Caution["item"], words: Words<"common" | "you">): string {
  const { you } = words.text;
  switch (item.kind) {
    case "allergy":
      return you.itemAllergy(substanceName(item.value, words));
    case "coeliac":
      return you.coeliac;
    case "intolerance":
      return you.itemIntolerance(you.intoleranceNames[item.value] ?? item.value);
    case "diet":
      return you.dietNames[item.value as DietId] ?? item.value;
    case "group":
      return you.itemGroup(groupName(item.value, words));
    case "own":
      return you.itemOwn(item.value);
  }
}

/** An allergen's name in the user's language; the user's own word stands as it is. */
export function substanceName(id: string, { formats }: Pick<Words, "formats">): string {
  const row = substanceOf(id);
  if (row === undefined) return id;
  return row[tableLanguage(formats)];
}
