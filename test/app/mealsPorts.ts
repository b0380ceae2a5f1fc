/** Ports over a store in memory, with a clock that stands still until it is moved and ids that count up. */
import { signal } from "@preact/signals";
import type { Ports } from "../../src/app/ports.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import type { Store } from "../../src/store/store.js";
import type { StoreError } from "../../src/store/storeError.js";
import { err } from "../../src/kernel/result.js";

export const NOW = Date.UTC(2026, 10, 25, 19, 0);

export function memoryPorts(store: Store = createMemoryStore()): Ports {
  let made = 0;
  return {
    store,
    storeTrouble: signal(null),
    storeSilent: signal(false),
    bluetooth: undefined,
    nowMs: () => NOW,
    newId: () => {
      made += 1;
      return `id-${made}`;
    },
    fetchText: () => Promise.resolve(null),
  };
}

/** A store that refuses to write while `full()` says so. */
export function fillingStore(full: () => boolean): Store {
  const store = createMemoryStore();
  const quota: StoreError = { kind: "quota" };
  return {
    ...store,
    save: (changes) => (full() ? Promise.resolve(err(quota)) : store.save(changes)),
  };
}

/** Waits until a fact holds; what waits on timers and on the store needs a few turns. */
export async function until(holds: () => boolean): Promise<void> {
  for (let turn = 0; turn < 4000; turn += 1) {
    if (holds()) return;
    await new Promise((resume) => setTimeout(resume, 5));
  }
  throw new Error("it never came true");
}

/** Long enough for what was begun without waiting for it. */
export const settle = (): Promise<void> => new Promise((resume) => setTimeout(resume, 30));
