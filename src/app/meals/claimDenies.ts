/** Which food groups a claim such as "menu says vegetarian" denies. Brings the diet tables along: load it when needed. */
import { claimsApart } from "../../diet/claimsIn.js";
import type { SubstanceId } from "../../diet/data/substances.js";
import { isKindOf } from "../../diet/substanceTree.js";
import type { FoodGroup } from "../../kernel/groups.js";
import type { ClaimDenies } from "../../meals/surprises.js";

/** A group is denied if all of these are: "no shrimp" says nothing of mussels, "no gelatine" nothing of meat. */
const MAKES_UP: Readonly<Record<FoodGroup, readonly SubstanceId[]>> = {
  meat: ["meat"],
  fish: ["fish"],
  shellfish: ["crustacean", "mollusc"],
  dairy: ["milk"],
  egg: ["egg"],
  nut: ["treeNut"],
  soya: ["soya"],
  alcohol: ["alcohol"],
};

/** A reader of claims that reads each text once. */
export function claimReader(): ClaimDenies {
  const known = new Map<string, readonly string[]>();
  return (claim, group) => {
    const denied = known.get(claim) ?? groupsDenied(claim);
    known.set(claim, denied);
    return denied.includes(group);
  };
}

function groupsDenied(text: string): string[] {
  // A religious claim speaks of how meat was slaughtered, not of whether there is any; "on request" denies nothing.
  const claims = claimsApart([text]).filter(({ weakens, onlyForDiet }) => weakens && onlyForDiet === null);
  const covers = claims.flatMap((claim) => claim.covers);
  const isDenied = (substance: SubstanceId) => covers.some((cover) => isKindOf(substance, cover));
  return Object.entries(MAKES_UP).flatMap(([group, parts]) => (parts.every(isDenied) ? [group] : []));
}
