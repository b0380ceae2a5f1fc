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
