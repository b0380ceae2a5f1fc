const LETTERS: readonly (readonly [RegExp, string])[] = [
  [/ß/g, "ss"],
  [/æ/g, "ae"],
  [/œ/g, "oe"],
  [/ø/g, "o"],
  [/ł/g, "l"],
  [/ı/g, "i"],
];

/**
 * One spelling for all spellings of a word: lower case, no accents, no apostrophes or soft hyphens, and the umlaut
 * pairs ae, oe, ue as the bare vowel. "Käse", "Kaese" and "kase" all give "kase". Both sides of every comparison are
 * folded, so a pair that is no umlaut ("blue") loses nothing.
 */
export function foldWord(word: string): string {
  let folded = word.toLowerCase().replace(/['’\u00ad\u200b-\u200d]/g, "");
  for (const [letter, plain] of LETTERS) folded = folded.replace(letter, plain);
  return folded
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/([aou])e/g, "$1");
}
