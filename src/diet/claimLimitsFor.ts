import type { Caution } from "./caution.js";
import { CLAIM_LIMITS, type ClaimLimit } from "./data/claimLimits.js";
import type { JurisdictionId } from "./jurisdiction.js";

/**
 * What the law or practice of a place lets a label mean, for the two conditions that have such a figure. Lactose has
 * no figure in the lists of the jurisdictions: the national practices are given with their countries. An allergy has
 * none: no amount is called harmless here.
 */
export function claimLimitsFor(item: Caution["item"], jurisdiction: JurisdictionId): ClaimLimit[] {
  if (item.kind === "coeliac") {
    return CLAIM_LIMITS.filter(
      (row) => row.substance === "glutenCereal" && row.jurisdictions.includes(jurisdiction),
    );
  }
  const lactose = item.kind === "intolerance" && item.value === "lactose";
  return lactose ? CLAIM_LIMITS.filter((row) => row.substance === "lactose") : [];
}
