import type { Verdict } from "../finding/finding.js";

/** What a finding looks like: solid, open or hatched. The words say the same. */
export type Tone = "smelled" | "notSmelled" | "uncertain";

/** A word of a finding, such as a kept one, as a tone. */
export function toneOf(verdict: Verdict): Tone {
  return verdict === "not smelled" ? "notSmelled" : verdict;
}
