import type { Lexicon } from "./lexicon.js";
import { stemsOf } from "./stemsOf.js";

/** Letters German puts between the parts of a compound. */
const LINKS = new Set(["", "s", "n", "en", "er", "e", "es", "ern", "nen"]);

/** A longer word is no dish; the search for parts stays short. */
const LONGEST_WORD = 60;

/** A name this short ends a compound only as its very last letters. */
const SHORTEST_EDGE = 3;

interface Span {
  readonly start: number;
  readonly end: number;
  readonly rowIds: readonly string[];
  readonly anywhere: boolean;
  readonly opens: boolean;
  readonly ends: boolean;
}

function candidates(word: string, lexicon: Lexicon): Span[] {
  const list: Span[] = [];
  for (let start = 0; start < word.length; start += 1) {
    for (let end = start + 2; end <= word.length; end += 1) {
      const part = lexicon.parts.get(word.slice(start, end));
      if (part !== undefined && (part.anywhere || part.opens || part.ends))
        list.push({ start, end, ...part });
    }
  }
  return list;
}

/** May the name stand there, given the end of the name before it and the start of the next? */
function mayStand(word: string, span: Span, leftEnd: number, rightStart: number): boolean {
  if (span.anywhere) return true;
  const short = span.end - span.start <= SHORTEST_EDGE;
  if (short) return (span.opens && span.start === 0) || (span.ends && span.end === word.length);
  // A link joins two names; before the first name it would be part of another word ("steig" is no "teig").
  const left = leftEnd === 0 ? span.start === 0 : LINKS.has(word.slice(leftEnd, span.start));
  const right = LINKS.has(word.slice(span.end, rightStart));
  return (span.opens && left) || (span.ends && right);
}

const standsWhole = (word: string, chosen: readonly Span[]): boolean =>
  chosen.every((span, i) =>
    mayStand(word, span, chosen[i - 1]?.end ?? 0, chosen[i + 1]?.start ?? word.length),
  );

const covered = (spans: readonly Span[]): number =>
  spans.reduce((sum, span) => sum + span.end - span.start, 0);

function better(left: readonly Span[], right: readonly Span[]): readonly Span[] {
  const gain = covered(left) - covered(right);
  return gain > 0 || (gain === 0 && left.length < right.length) ? left : right;
}

/**
 * The names inside one closed compound: of all ways to lay names side by side, the one that covers most letters, in
 * the fewest names. "rinderbruhe" holds "rind" and "bruhe", "buchweizenmehl" holds "buchweizen" and "mehl" but no
 * "weizen". Short names count only at an edge or beside another name, so "schwein" holds no "wein".
 */
function partsOf(word: string, lexicon: Lexicon): readonly Span[] {
  const open = candidates(word, lexicon);
  const lay = (chosen: readonly Span[], from: number): readonly Span[] =>
    open
      .filter((span) => span.start >= from)
      .map((span) => lay([...chosen, span], span.end))
      .reduce(better, standsWhole(word, chosen) ? chosen : []);
  return word.length > LONGEST_WORD ? [] : lay([], 0);
}

/** Rows a folded word speaks for: as a whole, else with a regular ending, else as a compound. */
export function analyzeWord(folded: string, lexicon: Lexicon): string[] {
  for (const stem of stemsOf(folded)) {
    const whole = lexicon.singles.get(stem);
    if (whole !== undefined) return [...whole];
  }
  return [...new Set(partsOf(folded, lexicon).flatMap((span) => span.rowIds))];
}
