import { foldWord } from "./foldWord.js";

/** One word of a text, with where it stands in the text as it was given. */
export interface Word {
  readonly raw: string;
  readonly folded: string;
  /** UTF-16 offsets in the text, end exclusive. */
  readonly start: number;
  readonly end: number;
  /** What stands between the word before and this one. */
  readonly gap: string;
}

const WORD = /[\p{L}\p{N}][\p{L}\p{M}\p{N}\u00ad\u200b-\u200d]*(?:['’][\p{L}\p{M}]+)*/gu;

/** The words of a text in order. Hyphens part words: each half of "Rinder-Brühe" speaks for itself. */
export function wordsOf(text: string): Word[] {
  const words: Word[] = [];
  let last = 0;
  for (const match of text.matchAll(WORD)) {
    const start = match.index;
    const end = start + match[0].length;
    words.push({ raw: match[0], folded: foldWord(match[0]), start, end, gap: text.slice(last, start) });
    last = end;
  }
  return words;
}

/** Do two neighbouring words belong to one name? Only blanks, line breaks, hyphens and apostrophes may stand between. */
export const joinsName = (word: Word): boolean => /^[\s\-‐‑–&+'’‘]*$/.test(word.gap);

/** Same, on one line. */
export const joinsOnLine = (word: Word): boolean => joinsName(word) && !/[\n\r]/.test(word.gap);
