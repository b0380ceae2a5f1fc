import { ADDITIVES } from "./data/knowledge/additives.js";
import { analyzeWord } from "./analyzeWord.js";
import { LEXICON, type Phrase } from "./lexicon.js";
import { misspelt } from "./misspelt.js";
import { isSmallWord, mayContainWords, negatedWords } from "./lineScopes.js";
import { stemsOf } from "./stemsOf.js";
import { joinsName, joinsOnLine, type Word } from "./wordsOf.js";

/** One place in the text where a row of the tables is named. */
export interface Mention {
  readonly rowId: string;
  /** First and last word, as indexes. */
  readonly first: number;
  readonly last: number;
  /** Stands under a "without X" or "X-free". */
  readonly negated: boolean;
  /** Stands under a "may contain". */
  readonly trace: boolean;
  /** Stands inside a longer name in which it does not mean itself: the "milk" of "coconut milk". */
  readonly namesake: boolean;
  /** The name it was taken for, where no name is spelt like that; null where it is. */
  readonly readAs: string | null;
}

interface Found {
  readonly rowId: string;
  readonly first: number;
  readonly last: number;
}

const E_NUMBER = /^(?:e|ins)(\d{3,4})[a-z]{0,2}$/;

function additivesNumbered(words: readonly Word[], i: number): Found[] {
  const word = words[i];
  const next = words[i + 1];
  if (word === undefined) return [];
  const spaced = (word.folded === "e" || word.folded === "ins") && next !== undefined && joinsName(next);
  const match = E_NUMBER.exec(spaced ? word.folded + next.folded : word.folded);
  const number = Number(match?.[1] ?? Number.NaN);
  return ADDITIVES.filter((row) =>
    row.numbers.some(([first, last]) => number >= first && number <= last),
  ).map((row) => ({ rowId: row.id, first: i, last: spaced ? i + 1 : i }));
}

const sameWord = (word: Word, name: string): boolean => stemsOf(word.folded).includes(name);

function phraseAt(words: readonly Word[], i: number, phrase: Phrase): Found[] {
  const fits = phrase.words.every((name, k) => {
    const word = words[i + k];
    return word !== undefined && sameWord(word, name) && (k === 0 || joinsName(word));
  });
  return fits ? [{ rowId: phrase.rowId, first: i, last: i + phrase.words.length - 1 }] : [];
}

const phrasesAt = (words: readonly Word[], i: number): Found[] =>
  stemsOf(words[i]?.folded ?? "")
    .flatMap((stem) => LEXICON.phrases.get(stem) ?? [])
    .flatMap((phrase) => phraseAt(words, i, phrase));

/** "laktosefrei", "glutenfreies", "fleischlose", "eggless". */
const FREE_ENDING = /^(.{2,})(?:free|less|(?:frei|los)(?:e[rsnm]?)?)$/;

/** The "laktose" of "laktosefrei", or undefined. */
const freeStem = (folded: string): string | undefined => FREE_ENDING.exec(folded)?.[1];

/** Words inside a name on one line that the name's row says do not mean themselves. */
function maskedBy(words: readonly Word[], found: readonly Found[]): ReadonlySet<number> {
  const masked = new Set<number>();
  for (const { rowId, first, last } of found) {
    const masks = LEXICON.rows.get(rowId)?.masks ?? [];
    const oneLine = words.slice(first + 1, last + 1).every(joinsOnLine);
    for (let i = first; oneLine && i <= last; i += 1) {
      const word = words[i];
      if (word !== undefined && masks.some((mask) => sameWord(word, mask))) masked.add(i);
    }
  }
  return masked;
}

/** Most words of a name that a slip may part. */
const WORDS_OF_A_NAME = 3;

const isKnown = ({ folded }: Word): boolean =>
  analyzeWord(folded, LEXICON).length > 0 || FREE_ENDING.test(folded);

/** Words, and runs of words with an unknown one among them, that nearly are a name. */
function nearNames(
  words: readonly Word[],
  negated: ReadonlySet<number>,
  trace: ReadonlySet<number>,
): Mention[] {
  const unknown = words.map((word) => !isKnown(word));
  return words.flatMap((_, first) =>
    Array.from({ length: WORDS_OF_A_NAME }, (_word, more) => words.slice(first, first + more + 1)).flatMap(
      (run, more): Mention[] => {
        const last = first + more;
        if (run.length <= more || !run.slice(1).every(joinsName)) return [];
        if (!unknown.slice(first, last + 1).includes(true)) return [];
        // "Marzipa or" is no slip for "Marzipan": what is said after the "or" must not take a name away.
        if ([run[0], run.at(-1)].some((end) => end !== undefined && isSmallWord(end.folded))) return [];
        return misspelt(run.map(({ folded }) => folded).join(" ")).map(({ rowId, name }) => ({
          rowId,
          first,
          last,
          negated: negated.has(last),
          trace: trace.has(first),
          namesake: false,
          readAs: name,
        }));
      },
    ),
  );
}

/**
 * Every place where the text names a row. Longer names never swallow shorter ones: "fish sauce" is found, and "fish"
 * too, so that a word added to a text can only add.
 */
export function findMentions(words: readonly Word[]): Mention[] {
  const negated = negatedWords(words);
  const trace = mayContainWords(words);
  const several = words.flatMap((_, i) => phrasesAt(words, i));
  const masked = maskedBy(words, several);
  const single = words.flatMap((word, i): Mention[] => {
    const flags = { first: i, last: i, trace: trace.has(i), namesake: masked.has(i), readAs: null };
    const stem = freeStem(word.folded);
    const inFree = stem === undefined ? [] : analyzeWord(stem, LEXICON);
    const rowIds = new Set([...analyzeWord(word.folded, LEXICON), ...inFree]);
    return [...rowIds].map((rowId) => ({
      rowId,
      ...flags,
      negated: negated.has(i) || inFree.includes(rowId),
    }));
  });
  const named = [...several, ...words.flatMap((_, i) => additivesNumbered(words, i))];
  return [
    ...single,
    ...named.map((found) => ({
      ...found,
      negated: negated.has(found.last),
      trace: trace.has(found.first),
      namesake: false,
      readAs: null,
    })),
    ...nearNames(words, negated, trace),
  ];
}
