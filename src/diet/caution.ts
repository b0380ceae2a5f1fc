import type { QuestionId } from "./data/questions.js";
import type { SubstanceId } from "./data/substances.js";
import type { Level } from "./level.js";
import type { ItemKind, LegalNote } from "./profileItems.js";
import type { Provenance } from "./provenance.js";

/** A word of the text, with UTF-16 offsets, end exclusive. */
export interface Trigger {
  readonly word: string;
  readonly start: number;
  readonly end: number;
}

/** A claim beside a caution. It is claimed, not known. */
export interface ClaimNote {
  /** A row of `data/claims.ts`, or "without". */
  readonly id: string;
  readonly word: string;
  readonly start: number | null;
  readonly end: number | null;
}

/** One thing to know about a dish before eating it. Cautions are only ever added. */
export interface Caution {
  /** Stable for the same profile item, substance and row, whatever else the text says. */
  readonly id: string;
  readonly item: { readonly key: string; readonly kind: ItemKind; readonly value: string };
  readonly level: Level;
  /** Null where only the user's own word was found. */
  readonly substance: SubstanceId | null;
  /** Words that triggered it, the strongest first; never empty. */
  readonly triggers: readonly Trigger[];
  /** Row of the knowledge tables that says so; null for the user's own word. */
  readonly row:
    | ({
        readonly id: string;
        readonly note: { readonly en: string; readonly de: string } | null;
      } & Provenance)
    | null;
  /** The legal list, diet text or rule that makes it matter to this item. */
  readonly basis: Provenance & { readonly legal: LegalNote | null };
  readonly claims: readonly ClaimNote[];
  /** The word stands in a name where it usually means something else ("milk" in "coconut milk"). */
  readonly namesake: boolean;
  /** The folded name that a misspelt word was taken for; null where a name is spelt like that. */
  readonly readAs: string | null;
  readonly ask: QuestionId;
}
