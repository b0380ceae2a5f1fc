/**
 * How far a row can be trusted: `SEEN` was read (often in a secondary quotation: `source` says), `MEMORY` is a
 * value from memory, `common practice` is what kitchens usually do.
 */
export type Mark = "SEEN" | "MEMORY" | "common practice";

/** Where a row comes from. Every row of every table has it. */
export interface Provenance {
  readonly source: string;
  readonly mark: Mark;
}
