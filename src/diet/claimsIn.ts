import { CLAIMS, CONDITIONAL_WORDS } from "./data/claims.js";
import type { SubstanceId } from "./data/substances.js";
import { foldWord } from "./foldWord.js";
import type { Mention } from "./findMentions.js";
import { findMentions } from "./findMentions.js";
import { CLAIM_WORDS, LEXICON } from "./lexicon.js";
import { clauseAround, isStop, opensNegation, optionAround, type Span } from "./lineScopes.js";
import type { DietId } from "./profile.js";
import { stemsOf } from "./stemsOf.js";
import { joinsName, wordsOf, type Word } from "./wordsOf.js";

/** What a menu says is not in a dish. Claimed, not known. */
export interface Claim {
  /** A row of `data/claims.ts`, or "without" for "without X", "X-free". */
  readonly id: string;
  readonly word: string;
  /** UTF-16 offsets; null where the claim came apart from the text. */
  readonly start: number | null;
  readonly end: number | null;
  readonly covers: readonly SubstanceId[];
  readonly onlyForDiet: DietId | null;
  /** Words it speaks of; null for the whole dish. */
  readonly scope: Span | null;
  /** False for "vegan on request": noted, but it weakens nothing. */
  readonly weakens: boolean;
}

const CONDITIONS = new Set(CONDITIONAL_WORDS.map(foldWord));
const DENIALS = new Set(["not", "nicht", "non", "nie", "never"]);

/** A claim alone between commas or brackets, or behind its noun, speaks of the dish; before a noun only of that noun. */
function scopeOf(words: readonly Word[], first: number, last: number): Span {
  const clause = clauseAround(words, first);
  if (clause.first === first && clause.last === last) return optionAround(words, first);
  if (clause.last === last) return { first: clause.first, last };
  let end = last;
  while (end + 1 <= clause.last && !isStop(words[end + 1]?.folded ?? "")) end += 1;
  return { first, last: end };
}

const conditional = (words: readonly Word[], i: number): boolean => {
  const { first, last } = optionAround(words, i);
  return words
    .slice(first, last + 1)
    .some((word) => stemsOf(word.folded).some((stem) => CONDITIONS.has(stem)));
};

/** A single letter is a mark of the menu only in brackets. */
const isMark = (word: Word): boolean => word.folded.length > 2 || /[([]\s*$/.test(word.gap);

function claimAt(words: readonly Word[], i: number): Claim[] {
  const word = words[i];
  const next = words[i + 1];
  if (word === undefined || !isMark(word) || DENIALS.has(words[i - 1]?.folded ?? "")) return [];
  const pair =
    next !== undefined && joinsName(next) ? CLAIM_WORDS.get(`${word.folded} ${next.folded}`) : undefined;
  const single = stemsOf(word.folded)
    .map((stem) => CLAIM_WORDS.get(stem))
    .find((id) => id !== undefined);
  const row = CLAIMS.find((claim) => claim.id === (pair ?? single));
  if (row === undefined) return [];
  const last = pair === undefined ? i : i + 1;
  return [
    {
      id: row.id,
      word: words
        .slice(i, last + 1)
        .map((each) => each.raw)
        .join(" "),
      start: word.start,
      end: words[last]?.end ?? word.end,
      covers: row.covers,
      onlyForDiet: row.onlyForDiet,
      scope: scopeOf(words, i, last),
      weakens: !conditional(words, i),
    },
  ];
}

function withoutClaim(words: readonly Word[], mention: Mention): Claim[] {
  const first = words[mention.first];
  const last = words[mention.last];
  const covers = LEXICON.rows.get(mention.rowId)?.contains ?? [];
  if (!mention.negated || first === undefined || last === undefined || covers.length === 0) return [];
  const clause = clauseAround(words, mention.first);
  // "Carbonara, ohne Ei": a clause of its own, or the only one of its line, speaks of the whole dish.
  const opening = words.slice(clause.first, mention.first);
  const scope = opening.every((word) => opensNegation(word.folded))
    ? optionAround(words, mention.first)
    : clause;
  return [
    {
      id: "without",
      word: words
        .slice(mention.first, mention.last + 1)
        .map((each) => each.raw)
        .join(" "),
      start: first.start,
      end: last.end,
      covers,
      onlyForDiet: null,
      scope,
      weakens: !conditional(words, mention.first),
    },
  ];
}

/** All claims of a text, given its words and mentions. */
export const claimsIn = (words: readonly Word[], mentions: readonly Mention[]): Claim[] => [
  ...words.flatMap((_, i) => claimAt(words, i)),
  ...mentions.flatMap((mention) => withoutClaim(words, mention)),
];

/** Claims given apart from the text, such as a symbol on the menu: they speak of the whole dish. */
export const claimsApart = (claims: readonly string[]): Claim[] =>
  claims.flatMap((text) => {
    const words = wordsOf(text);
    return claimsIn(words, findMentions(words)).map((claim) => ({
      ...claim,
      start: null,
      end: null,
      scope: null,
    }));
  });
