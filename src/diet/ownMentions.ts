import { stemsOf } from "./stemsOf.js";
import { joinsName, wordsOf, type Word } from "./wordsOf.js";

/** From this length a user's word is also found inside a compound: "Pilz" in "Pilzrisotto". */
const COMPOUND_LENGTH = 4;

const shortest = (folded: string): string =>
  stemsOf(folded).reduce((left, right) => (right.length < left.length ? right : left));

function speaksOf(word: Word, own: string): boolean {
  const stems = stemsOf(own);
  if (stemsOf(word.folded).some((stem) => stems.includes(stem))) return true;
  const core = shortest(own).length >= COMPOUND_LENGTH ? shortest(own) : own;
  return core.length >= COMPOUND_LENGTH && word.folded.includes(core);
}

/** Where a text uses the user's own word or words, as [first, last] indexes of words. */
export function ownMentions(words: readonly Word[], own: string): { first: number; last: number }[] {
  const parts = wordsOf(own).map((word) => word.folded);
  if (parts.length === 0) return [];
  return words.flatMap((_, i) => {
    const fits = parts.every((part, k) => {
      const word = words[i + k];
      return word !== undefined && speaksOf(word, part) && (k === 0 || joinsName(word));
    });
    return fits ? [{ first: i, last: i + parts.length - 1 }] : [];
  });
}
