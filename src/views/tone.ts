import type { Verdict } from "../finding/finding.js";

/** What a finding looks like: solid, open or hatched. The words say the same. */
export type Tone = "smelled" | "notSmelled" | "uncertain";

/** The loudest first: what was smelled, then what stays open. */
export const TONES_BY_WEIGHT: readonly Tone[] = ["smelled", "uncertain", "notSmelled"];

/** A word of a finding, such as a kept one, as a tone. */
export function toneOf(verdict: Verdict): Tone {
  return verdict === "not smelled" ? "notSmelled" : verdict;
}

/** Findings with the loudest first, in their own order where they are alike. */
export function inOrderOfWeight<Found extends { readonly verdict: Verdict }>(
  findings: readonly Found[],
): Found[] {
  const weight = ({ verdict }: Found) => TONES_BY_WEIGHT.indexOf(toneOf(verdict));
  return [...findings].sort((left, right) => weight(left) - weight(right));
}
