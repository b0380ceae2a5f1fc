/** The part of the store that keeps noses, and how a nose lies in it: in the form of its file. */
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import { instant, parseWith, type RecordFault } from "../meals/parseWith.js";
import type { MovedFrom, Nose } from "../nose/nose.js";
import { checkNose, noseFileWords, packedNose } from "../nose/noseFile.js";
import type { SetAsideRecord, Stored } from "./storeError.js";
import type { NoseEvent } from "./storeTypes.js";

/** A nose as a list shows it. */
export interface NoseNote {
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  readonly demo: boolean;
  /** Only of a nose that was moved from another sniffer. */
  readonly moved?: MovedFrom | undefined;
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

const headSchema = v.looseObject({
  id: v.pipe(v.string(), v.nonEmpty("must not be empty")),
  name: v.string(),
  taughtAt: instant,
  transfer: v.optional(
    v.looseObject({
      of: v.looseObject({ snifferId: v.string() }),
      pairs: v.number(),
      gain: v.looseObject({
        before: v.number(),
        after: v.number(),
        factor: v.number(),
        low: v.number(),
        high: v.number(),
      }),
    }),
  ),
});

/** Reads a nose in the form of its file. */
export function parseNose(value: unknown): Result<Nose, RecordFault> {
  const checked = checkNose(value);
  if (checked.ok) return checked;
  const { error } = checked;
  if (error.kind === "badField") return err({ field: error.field, cause: error.detail });
  return err({ field: "", cause: noseFileWords(error) });
}

const parseHead = parseWith(headSchema);

/** Only what a list shows: the weights of a nose are large, and are read when it is used. */
export function parseNoseHead(value: unknown): Result<Omit<NoseNote, "demo">, RecordFault> {
  const head = parseHead(value);
  if (!head.ok) return head;
  const { id, name, taughtAt, transfer } = head.value;
  if (transfer === undefined) return ok({ id, name, taughtAt });
  const { pairs, gain } = transfer;
  return ok({ id, name, taughtAt, moved: { of: { snifferId: transfer.of.snifferId }, pairs, gain } });
}

/** The form in which a nose is kept. @throws {RangeError} if it is no sound nose */
export function noseValue(nose: Nose): unknown {
  const value = packedNose(nose);
  const checked = parseNose(value);
  if (checked.ok) return value;
  throw new RangeError(`${checked.error.field || "the nose"} ${checked.error.cause}`);
}
