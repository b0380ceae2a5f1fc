import { signal } from "@preact/signals";
import type { Store } from "../store/store.js";
import type { StoreError } from "../store/storeError.js";
import { lateStore } from "./lateStore.js";
import type { Ports } from "./ports.js";

/** The store and its schemas are the heaviest part of the start: they come in a piece of their own. */
async function openStore(onTrouble: (error: StoreError) => void): Promise<Store> {
  const { openDexieStore } = await import("../store/dexieStore.js");
  const opened = await openDexieStore();
  if (opened.ok) return opened.value;
  const { createMemoryStore } = await import("../store/memoryStore.js");
  onTrouble(opened.error);
  return createMemoryStore();
}

/** The real parts. Where the phone's storage cannot be used, memory stands in, and the app says so. */
export function browserPorts(): Ports {
  const storeTrouble = signal<StoreError | null>(null);
  const opening = openStore((error) => {
    storeTrouble.value = error;
  });
  return {
    store: lateStore(opening),
    storeTrouble,
    bluetooth: "bluetooth" in navigator ? navigator.bluetooth : undefined,
    nowMs: () => Date.now(),
    newId: () => crypto.randomUUID(),
    fetchText: async (path) => {
      try {
        const response = await fetch(path);
        return response.ok ? await response.text() : null;
      } catch {
        return null;
      }
    },
  };
}
