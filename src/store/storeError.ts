import type { Result } from "../kernel/result.js";

/** Why the store did not do what was asked. Each kind has one remedy, which the screen tells. */
export type StoreError =
  | { readonly kind: "quota" } // storage is full: export and delete photos. Nothing of the write was kept
  | { readonly kind: "blockedUpgrade" } // another tab holds an older version of the database: close that tab
  | { readonly kind: "closed" } // the connection was closed, by a newer tab or by deletion: reload the page
  | { readonly kind: "aborted" } // the browser gave the transaction up and nothing was written: try again
  | { readonly kind: "unavailable" } // no storage here, as in some private windows: use an ordinary window
  | { readonly kind: "newerVersion" } // a newer Nidor wrote this database: reload to get the newer Nidor
  | { readonly kind: "corrupt"; readonly table: string; readonly id: string; readonly cause: string } // set aside
  | { readonly kind: "unknownId"; readonly table: string; readonly id: string } // it is not here (any more)
  | { readonly kind: "unexpected"; readonly detail: string };

export type StoreErrorKind = StoreError["kind"];

/** A record that did not pass its check: reported and kept apart, never lost, never shown as if it were sound. */
export interface SetAsideRecord {
  readonly table: string;
  readonly id: string;
  /** Field and cause. */
  readonly cause: string;
}

/** What every call of the store brings back. */
export type Stored<T> = Promise<Result<T, StoreError>>;

/** Carries a typed error out of a transaction, which ends with nothing written. */
export class StoreRefusal extends Error {
  constructor(readonly error: StoreError) {
    super(`the store refused: ${error.kind}`);
    this.name = "StoreRefusal";
  }
}

/** DOMException names: Indexed Database API 3.0, section 2.8 and 4; Dexie keeps the names or wraps them in `inner`. */
const KIND_OF_NAME: Readonly<
  Record<string, Exclude<StoreErrorKind, "corrupt" | "unknownId" | "unexpected">>
> = {
  QuotaExceededError: "quota",
  AbortError: "aborted",
  TimeoutError: "aborted",
  VersionError: "newerVersion",
  DatabaseClosedError: "closed",
  MissingAPIError: "unavailable",
  OpenFailedError: "unavailable",
  SecurityError: "unavailable",
};

/** Names the kind of whatever was thrown under the store. The innermost known name counts, not its wrapping. */
export function asStoreError(cause: unknown): StoreError {
  return knownError(cause) ?? { kind: "unexpected", detail: described(cause) };
}

/** The kind of a thrown value, or undefined where the name says nothing. */
export function knownError(cause: unknown): StoreError | undefined {
  if (cause instanceof StoreRefusal) return cause.error;
  if (typeof cause !== "object" || cause === null) return undefined;
  // `inner` wraps one error; `failures` are those of the single operations of a bulk one.
  const { name, inner, failures } = cause as { name?: unknown; inner?: unknown; failures?: unknown };
  const within = Array.isArray(failures) ? failures : [inner];
  for (const one of within) {
    const known = one === cause ? undefined : knownError(one);
    if (known !== undefined) return known;
  }
  const kind = typeof name === "string" ? KIND_OF_NAME[name] : undefined;
  return kind === undefined ? undefined : { kind };
}

function described(cause: unknown): string {
  return cause instanceof Error ? `${cause.name}: ${cause.message}` : String(cause);
}
