/** The browser threw the data away: said in every place, until they are back or the person says not now. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Store } from "../store/store.js";

export interface LostNotice {
  readonly shown: ReadonlySignal<boolean>;
  /** Asks the store, which knows once any call of it has come back. */
  look(): void;
  /** The data are back, or the person does not want to be told again. */
  settle(): void;
}

export function createLostNotice(store: Pick<Store, "wasLost">): LostNotice {
  const shown = signal(false);
  let isSettled = false;
  return {
    shown,
    look: () => {
      shown.value = store.wasLost && !isSettled;
    },
    settle: () => {
      isSettled = true;
      shown.value = false;
    },
  };
}
