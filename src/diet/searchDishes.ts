import { KNOWLEDGE } from "./data/knowledge.js";
import { editDistance } from "./editDistance.js";
import { foldWord } from "./foldWord.js";
import { letterCount, lettersOf } from "./letters.js";
import { shownName } from "./lexicon.js";

/** A dish, ingredient or additive the user may mean. */
export interface DishHit {
  readonly rowId: string;
  /** The form that fits the query best, as written in the table. */
  readonly name: string;
}

interface IndexEntry {
  readonly rowId: string;
  readonly name: string;
  readonly folded: string;
  /** Which letters a to z occur, one bit each. */
  readonly letters: number;
}

/** A query this short must be spelled right; longer ones may be one or two letters off. */
const EXACT_LENGTH = 3;
const ONE_TYPO_LENGTH = 5;

const foldText = (text: string): string =>
  text
    .split(/[\s-]+/)
    .map(foldWord)
    .filter((word) => word !== "")
    .join(" ");

const entryOf = (rowId: string, name: string): IndexEntry => {
  const folded = foldText(name);
  return { rowId, name, folded, letters: lettersOf(folded) };
};

const INDEX: readonly IndexEntry[] = KNOWLEDGE.filter((row) => row.kind !== "word").flatMap((row) =>
  [...new Set([...row.de, ...row.en].map(shownName))].map((name) => entryOf(row.id, name)),
);

/** A number is right or another number: "E471" is no typo of "E441". */
function typosAllowed(query: string): number {
  if (query.length <= EXACT_LENGTH || /\d/.test(query)) return 0;
  return query.length <= ONE_TYPO_LENGTH ? 1 : 2;
}

/** Lower is better; undefined where the name does not fit. A typo costs more than any kind of right spelling. */
function costOf(query: string, letters: number, typos: number, entry: IndexEntry): number | undefined {
  const { folded } = entry;
  const longer = (folded.length - query.length) / 100;
  if (folded === query) return 0;
  if (folded.startsWith(query)) return 1 + longer;
  if (folded.includes(` ${query}`)) return 2 + longer;
  if (query.length > EXACT_LENGTH && folded.includes(query)) return 3 + longer;
  // Each letter the name lacks is a typo: most names are ruled out without counting further.
  if (typos === 0 || letterCount(letters & ~entry.letters) > typos) return undefined;
  const { prefix, whole } = editDistance(query, folded, typos);
  if (whole <= typos) return 4 + whole;
  return prefix <= typos ? 4.5 + prefix + longer : undefined;
}

/**
 * Finds rows of the knowledge tables by name, in German and English at once: forgives typos (one letter in four or
 * five, two in longer words), finishes words, knows umlauts in all spellings.
 *
 * @param limit - whole, >= 0; at most so many rows come back, best first
 */
export function searchDishes(query: string, limit: number): DishHit[] {
  const folded = foldText(query);
  if (folded === "") return [];
  const letters = lettersOf(folded);
  // Who wrote a name in full meant that one, and no other that is spelled much like it.
  const typos = INDEX.some((entry) => entry.folded === folded) ? 0 : typosAllowed(folded);
  const best = new Map<string, { hit: DishHit; cost: number }>();
  for (const entry of INDEX) {
    const { rowId, name } = entry;
    const cost = costOf(folded, letters, typos, entry);
    const known = best.get(rowId);
    if (cost !== undefined && (known === undefined || cost < known.cost))
      best.set(rowId, { hit: { rowId, name }, cost });
  }
  return [...best.values()]
    .sort((a, b) => a.cost - b.cost || (a.hit.name < b.hit.name ? -1 : 1))
    .slice(0, Math.max(0, limit))
    .map(({ hit }) => hit);
}
