/** What the app needs from outside, so that a test can put something else behind it. */
import type { ReadonlySignal } from "@preact/signals";
import type { Store } from "../store/store.js";
import type { StoreError } from "../store/storeError.js";

export interface Ports {
  readonly store: Store;
  /** Why the phone's storage is not used and memory stands in; null where all is well. */
  readonly storeTrouble: ReadonlySignal<StoreError | null>;
  /** The phone's storage has not answered for so long that the person is told; nothing stands in for it. */
  readonly storeSilent: ReadonlySignal<boolean>;
  /** undefined where the browser has no Web Bluetooth. */
  readonly bluetooth: Bluetooth | undefined;
  /** Milliseconds since 1970, by the phone's clock. */
  readonly nowMs: () => number;
  readonly newId: () => string;
  /** Text of a file shipped beside the app; null where it cannot be had. */
  readonly fetchText: (path: string) => Promise<string | null>;
}

/** The instant now, as the files write it. */
export const nowIso = (ports: Pick<Ports, "nowMs">): string => new Date(ports.nowMs()).toISOString();
