/** Where in a text a "without", a "may contain" or an alternative begins and ends. */
import type { Word } from "./wordsOf.js";

const NEGATIONS = new Set([
  "ohne",
  "without",
  "no",
  "kein",
  "keine",
  "keinen",
  "keiner",
  "keinem",
  "keinerlei",
  "sans",
  "senza",
  "sin",
  "non",
  "minus",
]);
const FREE = /^fr(?:ee|ei(?:e[rsnm]?)?)$/;
const FREE_OF = new Set(["from", "of", "von"]);
/** "free range eggs" are no claim. */
const NO_CLAIM_AFTER_FREE = new Set(["range", "run", "style", "roaming", "flowing"]);
const DOUBLE = new Set(["not", "nicht", "never", "nie"]);
const STOPS = new Set([
  "mit",
  "with",
  "but",
  "aber",
  "dazu",
  "auf",
  "in",
  "im",
  "an",
  "am",
  "on",
  "served",
  "plus",
  "sondern",
  "contains",
  "enthalt",
  "for",
  "fur",
  "und",
  "and",
]);
const JOINERS = new Set(["und", "and", "or", "oder", "y", "e", "et"]);
/** Words a "without" reaches over, joining words not counted. */
const NEGATION_REACH = 4;

const ALTERNATIVES = new Set(["oder", "or", "wahlweise", "alternativ", "alternatively"]);
const MAY = new Set(["may", "might", "could", "can"]);
const MAY_CLOSERS = new Set(["enthalten", "vorkommen", "verarbeitet"]);
const SMALL_WORDS = [NEGATIONS, FREE_OF, DOUBLE, STOPS, JOINERS, ALTERNATIVES, MAY];

/** A word that says how names stand to each other, and at the end of a name is no part of it: "or", "ohne", "frei". */
export function isSmallWord(folded: string): boolean {
  return FREE.test(folded) || SMALL_WORDS.some((words) => words.has(folded));
}

const breaksClause = (gap: string): boolean => /[,;:.!?()[\]{}|•\n\r/–—]/.test(gap);
const breaksSentence = (gap: string): boolean => /[.!?;|•\n\r]/.test(gap);
const breaksOption = (gap: string): boolean => /[;|•\n\r]/.test(gap);

/** Is the gap before word `i` a break of this kind? The text's first word breaks nothing. */
const at = (words: readonly Word[], i: number, test: (gap: string) => boolean): boolean =>
  i > 0 && test(words[i]?.gap ?? "");

function reachAfter(words: readonly Word[], first: number, negated: Set<number>): void {
  let counted = 0;
  for (let i = first; i < words.length && counted < NEGATION_REACH; i += 1) {
    const word = words[i]?.folded ?? "";
    if (at(words, i, breaksClause) && i > first) return;
    if (at(words, i, breaksSentence)) return;
    if (JOINERS.has(word)) continue;
    if (STOPS.has(word)) return;
    negated.add(i);
    counted += 1;
  }
}

/** Index of the first word a negation that begins at word `i` speaks of, or undefined if none begins there. */
function negationStart(words: readonly Word[], i: number): number | undefined {
  const word = words[i]?.folded ?? "";
  const next = words[i + 1]?.folded ?? "";
  if (DOUBLE.has(words[i - 1]?.folded ?? "")) return undefined;
  if (NEGATIONS.has(word)) return i + 1;
  if (FREE.test(word) && FREE_OF.has(next)) return i + 2;
  if (DOUBLE.has(word) && /^contain/.test(next)) return i + 2;
  return undefined;
}

/** Indexes of the words that stand under a "without X", "no X", "X-free" or "free from X". */
export function negatedWords(words: readonly Word[]): ReadonlySet<number> {
  const negated = new Set<number>();
  words.forEach((word, i) => {
    const start = negationStart(words, i);
    if (start !== undefined) reachAfter(words, start, negated);
    const after = words[i + 1]?.folded ?? "";
    const freeBehind = FREE.test(word.folded) && !FREE_OF.has(after) && !NO_CLAIM_AFTER_FREE.has(after);
    if (freeBehind && i > 0 && !breaksClause(word.gap)) negated.add(i - 1);
  });
  return negated;
}

/** Indexes of the words under a "may contain", "traces of", "kann Spuren von ... enthalten". */
export function mayContainWords(words: readonly Word[]): ReadonlySet<number> {
  const under = new Set<number>();
  let open = false;
  words.forEach((word, i) => {
    if (at(words, i, breaksSentence)) open = false;
    if (opensMayContain(words, i)) open = true;
    else if (open && MAY_CLOSERS.has(word.folded)) open = false;
    else if (open) under.add(i);
  });
  return under;
}

function opensMayContain(words: readonly Word[], i: number): boolean {
  const word = words[i]?.folded ?? "";
  const ahead = words.slice(i + 1, i + 4).map((each) => each.folded);
  if (/^trac?es?$/.test(word) || /^spuren$/.test(word)) return true;
  if (MAY.has(word)) return ahead.some((each) => /^contain/.test(each)) || ahead.includes("present");
  if (word === "kann" || word === "konnen" || word === "konnte") {
    return sentenceFrom(words, i).some((each) => MAY_CLOSERS.has(each) || each === "spuren");
  }
  return (
    word === "facility" || word === "factory" || (word === "betrieb" && words[i - 1]?.folded !== "ausser")
  );
}

function sentenceFrom(words: readonly Word[], first: number): string[] {
  const sentence: string[] = [];
  for (let i = first + 1; i < words.length && !at(words, i, breaksSentence); i += 1)
    sentence.push(words[i]?.folded ?? "");
  return sentence;
}

/** A run of words, both ends included. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

function spanAround(words: readonly Word[], i: number, breaks: (index: number) => boolean): Span {
  let first = i;
  while (first > 0 && !breaks(first)) first -= 1;
  let last = i;
  while (last + 1 < words.length && !breaks(last + 1)) last += 1;
  return { first, last };
}

/** The alternative a word belongs to: a line, or one side of an "or". */
export const optionAround = (words: readonly Word[], i: number): Span =>
  spanAround(
    words,
    i,
    (index) => at(words, index, breaksOption) || ALTERNATIVES.has(words[index]?.folded ?? ""),
  );

/** The stretch between commas, brackets or colons, inside one alternative. */
export const clauseAround = (words: readonly Word[], i: number): Span =>
  spanAround(
    words,
    i,
    (index) => at(words, index, breaksClause) || ALTERNATIVES.has(words[index]?.folded ?? ""),
  );

/** Words a "without X" may begin with: "frei von", "contains no". */
export const opensNegation = (folded: string): boolean =>
  NEGATIONS.has(folded) ||
  FREE.test(folded) ||
  FREE_OF.has(folded) ||
  DOUBLE.has(folded) ||
  /^(contain|enth?alt)/.test(folded);

export const isStop = (folded: string): boolean => STOPS.has(folded);
