import type { MovedFrom } from "../nose/nose.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";

/** Where a moved nose comes from, in one sentence; null for a nose that was not moved. */
export function movedText(moved: MovedFrom | undefined, words: Words<"transfer">): string | null {
  if (moved === undefined) return null;
  const { factor, low, high } = moved.gain;
  const [by, from, to] = [factor, low, high].map((value) => numberText(value, words.formats, 2));
  const pairs = numberText(moved.pairs, words.formats);
  return words.text.transfer.movedFrom(moved.of.snifferId, pairs, by ?? "", from ?? "", to ?? "");
}
