/** The part of the store that keeps noses (types only). */
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import type { RecordFault } from "../meals/parseMeal.js";
import type { SetAsideRecord, Stored } from "./storeError.js";
import type { NoseEvent } from "./storeTypes.js";

/** What the store needs of a nose; the rest is checked by the nose station. */
export interface Nose {
  readonly id: string;
  readonly name: string;
  readonly taughtAt: string;
  readonly [key: string]: unknown;
}

/** A nose as a list shows it. */
export interface NoseNote {
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  readonly demo: boolean;
}

/** Every version that was ever taught, and what became of it. */
export interface NoseList {
  /** Newest first. */
  readonly noses: readonly NoseNote[];
  readonly activeId: string | null;
  /** Oldest first. */
  readonly history: readonly NoseEvent[];
  readonly setAside: readonly SetAsideRecord[];
}

/** Noses: no version is ever lost, and one at most is active. */
export interface NoseStore {
  /** Keeps a nose that was just taught. It is not active yet. A version whose id is known stays as it is. */
  addNose(nose: Nose, eventId: string, at: string, options?: { readonly demo?: boolean }): Stored<void>;
  getNose(id: string): Stored<Nose>;
  /** null: none was accepted yet. */
  activeNose(): Stored<Nose | null>;
  listNoses(): Stored<NoseList>;
  /** `accepted` and `rolledBack` make the nose the active one; `rejected` leaves the active one as it is. */
  decideNose(
    id: string,
    decision: "accepted" | "rejected" | "rolledBack",
    eventId: string,
    at: string,
  ): Stored<void>;
}

/** Checks a value that claims to be a nose, as far as the store reads it. */
export function parseNose(value: unknown): Result<Nose, RecordFault> {
  const checked = v.safeParse(noseSchema, value, { abortEarly: true });
  if (checked.success) return ok(checked.output);
  const issue = checked.issues[0];
  return err({ field: v.getDotPath(issue) ?? "", cause: issue.message });
}
const noseSchema = v.looseObject({ id: v.string(), name: v.string(), taughtAt: v.string() });
