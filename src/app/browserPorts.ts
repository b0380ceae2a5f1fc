import type { Ports } from "./ports.js";

/** The store and its schemas are the heaviest part of the start: they come in a piece of their own. */
async function openStore(): Promise<Pick<Ports, "store" | "storeTrouble">> {
  const { openDexieStore } = await import("../store/dexieStore.js");
  const opened = await openDexieStore();
  if (opened.ok) return { store: opened.value, storeTrouble: null };
  const { createMemoryStore } = await import("../store/memoryStore.js");
  return { store: createMemoryStore(), storeTrouble: opened.error };
}

/** The real parts. Where the phone's storage cannot be used, memory stands in, and the app says so. */
export async function browserPorts(): Promise<Ports> {
  return {
    ...(await openStore()),
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
