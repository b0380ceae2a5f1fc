import type { Breathe } from "../../kernel/breathe.js";

/** UTF-16 units that are encoded at one go: about a millisecond's work. */
const SLICE = 65_536;

/** A long text as UTF-8, encoded slice by slice. */
export async function encoded(text: string, breathe: Breathe): Promise<Blob> {
  const slices: Blob[] = [];
  for (let from = 0; from < text.length;) {
    // Never between the two halves of one character.
    const upto = from + SLICE - (isFirstHalf(text.charCodeAt(from + SLICE - 1)) ? 1 : 0);
    slices.push(new Blob([text.slice(from, upto)]));
    from = upto;
    await breathe();
  }
  return new Blob(slices);
}

/** @see The Unicode Standard, section 3.9, D91: the leading unit of a surrogate pair */
const isFirstHalf = (unit: number) => unit >= 0xd800 && unit <= 0xdbff;
