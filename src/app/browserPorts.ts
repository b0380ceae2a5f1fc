import { signal, type Signal } from "@preact/signals";
import type { Store } from "../store/store.js";
import type { StoreError } from "../store/storeError.js";
import { lateStore } from "./lateStore.js";
import type { Ports } from "./ports.js";
import { untilHere } from "./pieces.js";

/** Opening takes a fraction of a second, and some on a slow phone. Common practice. */
const SILENT_AFTER_MS = 8000;

/** The store and its schemas are the heaviest part of the start: they come in a piece of their own. */
async function openStore(trouble: Signal<StoreError | null>, silent: Signal<boolean>): Promise<Store> {
  const { openDexieStore } = await untilHere(() => import("../store/dexieStore.js"));
  const patience = setTimeout(() => {
    silent.value = true;
  }, SILENT_AFTER_MS);
  const opened = await openDexieStore();
  clearTimeout(patience);
  silent.value = false;
  if (opened.ok) return opened.value;
  const { createMemoryStore } = await untilHere(() => import("../store/memoryStore.js"));
  trouble.value = opened.error;
  return createMemoryStore();
}

/** The real parts. Where the phone's storage cannot be used, memory stands in, and the app says so. */
export function browserPorts(): Ports {
  const storeTrouble = signal<StoreError | null>(null);
  const storeSilent = signal(false);
  return {
    store: lateStore(openStore(storeTrouble, storeSilent)),
    storeTrouble,
    storeSilent,
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
