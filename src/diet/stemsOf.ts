/** Regular endings of German and English, longest first; folding has already undone the umlaut of a plural. */
const ENDINGS = ["ern", "ens", "es", "en", "er", "em", "n", "e", "s"] as const;

/** A stem shorter than this takes no ending but "s": "ein" is no plural of "Ei". */
const SHORT = 3;

/**
 * The forms a folded word may be listed under, longest first: itself, then itself without a regular ending.
 * "nusse" gives "nuss", "anchovies" gives "anchovy", "eggs" gives "egg".
 */
export function stemsOf(folded: string): string[] {
  const stems = [folded];
  if (folded.endsWith("ies") && folded.length > SHORT + 2) stems.push(`${folded.slice(0, -3)}y`);
  for (const ending of ENDINGS) {
    const stem = folded.slice(0, -ending.length);
    if (folded.endsWith(ending) && (stem.length > SHORT || (ending === "s" && stem.length >= 2)))
      stems.push(stem);
  }
  return stems.sort((left, right) => right.length - left.length);
}
