/** Which letters a to z occur in a folded word, one bit each: it rules most names out without counting further. */
export function lettersOf(folded: string): number {
  let letters = 0;
  for (const letter of folded) {
    const place = letter.charCodeAt(0) - 97;
    if (place >= 0 && place < 26) letters |= 1 << place;
  }
  return letters;
}

/** How many letters such a set holds. */
export function letterCount(letters: number): number {
  let count = 0;
  for (let left = letters; left !== 0; left &= left - 1) count += 1;
  return count;
}
