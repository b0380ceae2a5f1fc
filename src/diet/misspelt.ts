/** Names of the tables that a word or two with a slip of the finger may mean: "carbonarra", "panna cota". */
import { editDistance } from "./editDistance.js";
import { LEXICON } from "./lexicon.js";
import type { KnowledgeRow } from "./knowledgeRow.js";
import { lettersOf, letterCount } from "./letters.js";

/** A shorter word is too often another word: "Butler" is no typo of "Butter". */
const SHORTEST = 7;
/** From this length two letters may be off. */
const TWO_TYPOS_LENGTH = 10;

/** Which rows bear a name that is nearly this one, and how it is spelt. */
export interface NearName {
  readonly rowId: string;
  readonly name: string;
}

interface Entry extends NearName {
  readonly letters: number;
}

const speaks = (row: KnowledgeRow | undefined): boolean =>
  row !== undefined &&
  [row.contains, row.often, row.may, row.unclear].some((substances) => substances.length > 0);

const entry = (name: string, rowId: string): Entry => ({ rowId, name, letters: lettersOf(name) });

const ENTRIES: readonly Entry[] = [
  ...[...LEXICON.singles].flatMap(([name, rowIds]) => rowIds.map((rowId) => entry(name, rowId))),
  ...[...LEXICON.phrases.values()].flat().map(({ words, rowId }) => entry(words.join(" "), rowId)),
].filter(({ name }) => name.length >= SHORTEST - 1);

/** By the first letter, which fingers seldom miss. */
const BY_FIRST: ReadonlyMap<string, readonly Entry[]> = new Map(
  [...new Set(ENTRIES.map(({ name }) => name.slice(0, 1)))].map((first) => [
    first,
    ENTRIES.filter(({ name }) => name.startsWith(first)),
  ]),
);

/**
 * The nearest names to a folded word, or to folded words joined by blanks; none for a short one, and none where the
 * nearest is an everyday word. A swap, a letter left out, added or changed counts as one slip.
 */
export function misspelt(folded: string): NearName[] {
  if (folded.length < SHORTEST || /\d/.test(folded)) return [];
  const limit = folded.length < TWO_TYPOS_LENGTH ? 1 : 2;
  const letters = lettersOf(folded);
  const near = (BY_FIRST.get(folded.slice(0, 1)) ?? [])
    .filter(({ name }) => Math.abs(name.length - folded.length) <= limit)
    .filter((one) => letterCount(letters & ~one.letters) <= limit)
    .map((one) => ({ ...one, distance: editDistance(folded, one.name, limit).whole }))
    .filter(({ distance }) => distance <= limit);
  const least = Math.min(...near.map(({ distance }) => distance));
  const nearest = near.filter(({ distance }) => distance === least);
  return nearest
    .filter(({ rowId }) => speaks(LEXICON.rows.get(rowId)))
    .map(({ rowId, name }) => ({ rowId, name }));
}
