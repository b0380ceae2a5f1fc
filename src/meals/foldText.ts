/** Marks over and under letters, as Unicode's canonical decomposition sets them apart. */
const MARKS = /\p{M}+/gu;

/** Text as a search compares it: lower case, without accents, sharp s as ss. @see Unicode Standard Annex 15 (NFD) */
export function foldText(text: string): string {
  return text.toLowerCase().replaceAll("ß", "ss").normalize("NFD").replace(MARKS, "");
}
