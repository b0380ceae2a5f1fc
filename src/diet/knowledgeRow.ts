/** The shape of one row of the knowledge tables, and a short hand to write one. */
import type { QuestionId } from "./data/questions.js";
import type { SubstanceId } from "./data/substances.js";
import type { Provenance } from "./provenance.js";

/**
 * `namesake`: a word that looks like an animal or a cereal and is none, such as buckwheat or butternut.
 * `word`: an everyday word that only looks like a food inside others, such as "Preis" or "toasted".
 * Only rows of kind `ingredient` give a meaning to words that users write themselves.
 */
export type RowKind = "dish" | "ingredient" | "additive" | "namesake" | "word";

export interface KnowledgeRow extends Provenance {
  readonly id: string;
  readonly kind: RowKind;
  /**
   * All forms but regular endings. `=word` matches the whole word only, `word-` also opens a compound, `-word` also
   * ends one; without a sign the length decides (see `lexicon.ts`). The first form is the one to show.
   */
  readonly en: readonly string[];
  readonly de: readonly string[];
  readonly contains: readonly SubstanceId[];
  readonly often: readonly SubstanceId[];
  readonly may: readonly SubstanceId[];
  readonly unclear: readonly SubstanceId[];
  /** Words inside the row's own names that do not mean what they say alone ("butter" in "butter bean"). */
  readonly masks: readonly string[];
  /** What to ask, where the substances' own questions miss the point. */
  readonly ask: QuestionId | null;
  readonly note: { readonly en: string; readonly de: string } | null;
}

export interface RowFacts {
  readonly contains?: readonly SubstanceId[];
  readonly often?: readonly SubstanceId[];
  readonly may?: readonly SubstanceId[];
  readonly unclear?: readonly SubstanceId[];
  readonly masks?: string;
  readonly ask?: QuestionId;
  readonly noteEn?: string;
  readonly noteDe?: string;
}

const listOf = (text: string, separator: string): string[] =>
  text.split(separator).filter((part) => part !== "");

/** Gives a writer of rows of one kind from one source; names are parted by "|". */
export const rowsOf =
  (kind: RowKind, provenance: Provenance) =>
  (id: string, en: string, de: string, facts: RowFacts = {}): KnowledgeRow => ({
    id,
    kind,
    en: listOf(en, "|"),
    de: listOf(de, "|"),
    contains: facts.contains ?? [],
    often: facts.often ?? [],
    may: facts.may ?? [],
    unclear: facts.unclear ?? [],
    masks: listOf(facts.masks ?? "", " "),
    ask: facts.ask ?? null,
    note:
      facts.noteEn === undefined || facts.noteDe === undefined
        ? null
        : { en: facts.noteEn, de: facts.noteDe },
    source: provenance.source,
    mark: provenance.mark,
  });
