/** The names of the knowledge tables, made ready for looking up. Built once, when the module loads. */
import { CLAIMS } from "./data/claims.js";
import { KNOWLEDGE } from "./data/knowledge.js";
import { foldWord } from "./foldWord.js";
import type { KnowledgeRow } from "./knowledgeRow.js";

/** From this length a name is found anywhere inside a closed compound: "Hausmacherleberwurstbrot". */
const ANYWHERE_LENGTH = 5;
/** From this length a name is found at an edge of a compound, or beside another name found there. */
const EDGE_LENGTH = 4;

/** A name of one word as a part of a compound. */
export interface CompoundPart {
  readonly rowIds: readonly string[];
  readonly anywhere: boolean;
  readonly opens: boolean;
  readonly ends: boolean;
}

/** A name of several words. `closed` claims and rows share the shape. */
export interface Phrase {
  readonly words: readonly string[];
  readonly rowId: string;
}

export interface Lexicon {
  readonly rows: ReadonlyMap<string, KnowledgeRow>;
  /** Folded name of one word to the rows that bear it. */
  readonly singles: ReadonlyMap<string, readonly string[]>;
  readonly parts: ReadonlyMap<string, CompoundPart>;
  /** First folded word to the names of several words that begin with it. */
  readonly phrases: ReadonlyMap<string, readonly Phrase[]>;
}

export interface ParsedName {
  readonly words: readonly string[];
  readonly wholeOnly: boolean;
  readonly opens: boolean;
  readonly ends: boolean;
}

/** Reads the signs of a name: "=Hering" whole word only, "Hack-" opens, "-eis" ends a compound. */
export function parseName(name: string): ParsedName {
  const bare = name.replace(/^[=-]|-$/g, "");
  return {
    words: bare
      .split(/[\s\-&]+/)
      .map(foldWord)
      .filter((word) => word !== ""),
    wholeOnly: name.startsWith("="),
    opens: name.endsWith("-"),
    ends: name.startsWith("-"),
  };
}

/** A name as shown to people, without its signs. */
export const shownName = (name: string): string => name.replace(/^[=-]|-$/g, "");

const addTo = <V>(map: Map<string, V[]>, key: string, value: V): void => {
  const list = map.get(key) ?? [];
  if (!list.includes(value)) list.push(value);
  map.set(key, list);
};

function partOf(
  word: string,
  parsed: ParsedName,
  known: CompoundPart | undefined,
  rowId: string,
): CompoundPart {
  const signed = parsed.opens || parsed.ends;
  const free = !parsed.wholeOnly && !signed;
  return {
    rowIds: [...new Set([...(known?.rowIds ?? []), rowId])],
    anywhere: (known?.anywhere ?? false) || (free && word.length >= ANYWHERE_LENGTH),
    opens: (known?.opens ?? false) || parsed.opens || (free && word.length >= EDGE_LENGTH),
    ends: (known?.ends ?? false) || parsed.ends || (free && word.length >= EDGE_LENGTH),
  };
}

/** Additive rows are found by number, so "E120" is no name here. */
const isNumber = (name: string): boolean => /^E\d/.test(name);

export function buildLexicon(rows: readonly KnowledgeRow[]): Lexicon {
  const singles = new Map<string, string[]>();
  const parts = new Map<string, CompoundPart>();
  const phrases = new Map<string, Phrase[]>();
  for (const row of rows) {
    for (const name of [...row.en, ...row.de].filter((each) => !isNumber(each))) {
      const parsed = parseName(name);
      const [first] = parsed.words;
      if (first === undefined) continue;
      if (parsed.words.length === 1) {
        addTo(singles, first, row.id);
        parts.set(first, partOf(first, parsed, parts.get(first), row.id));
      } else {
        addTo(phrases, first, { words: parsed.words, rowId: row.id });
        // Menus write "icecream" for "ice cream".
        if (parsed.words.length === 2) addTo(singles, parsed.words.join(""), row.id);
      }
    }
  }
  return { rows: new Map(rows.map((row) => [row.id, row])), singles, parts, phrases };
}

export const LEXICON: Lexicon = buildLexicon(KNOWLEDGE);

/** Words of claims, folded, to the claim's id; claims of two words are joined by a blank. */
export const CLAIM_WORDS: ReadonlyMap<string, string> = new Map(
  CLAIMS.flatMap((claim) =>
    [...claim.en, ...claim.de].map((name): [string, string] => [parseName(name).words.join(" "), claim.id]),
  ),
);
