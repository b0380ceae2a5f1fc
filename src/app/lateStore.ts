/** A store that can be called before it is open: each call waits for it. */
import type { Store } from "../store/store.js";

/**
 * @param opening - never rejects: where the phone's storage cannot be used, memory stands in
 * @returns the store. `wasLost` is false until it is open, and right once any call has come back.
 */
export function lateStore(opening: Promise<Store>): Store {
  let opened: Store | null = null;
  void opening.then((store) => {
    opened = store;
  });
  const waiting: Pick<Store, "subscribe" | "onClosed" | "close"> = {
    subscribe: (tables, listener) => {
      let end: (() => void) | undefined;
      let isOver = false;
      void opening.then((store) => {
        if (!isOver) end = store.subscribe(tables, listener);
      });
      return () => {
        isOver = true;
        end?.();
      };
    },
    onClosed: (listener) => void opening.then((store) => store.onClosed(listener)),
    close: () => void opening.then((store) => store.close()),
  };
  return new Proxy(waiting as Store, {
    get: (known, name: keyof Store) => {
      if (name === "wasLost") return opened?.wasLost ?? false;
      if (name in known) return known[name];
      // All that is left are calls that give a promise.
      return async (...values: unknown[]) => (await opening)[name as "save"](...(values as [never]));
    },
  });
}
