import { openDexieStore } from "../store/dexieStore.js";
import { createMemoryStore } from "../store/memoryStore.js";
import type { Ports } from "./ports.js";

/** The real parts. Where the phone's storage cannot be used, memory stands in, and the app says so. */
export async function browserPorts(): Promise<Ports> {
  const opened = await openDexieStore();
  return {
    store: opened.ok ? opened.value : createMemoryStore(),
    storeTrouble: opened.ok ? null : opened.error,
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
