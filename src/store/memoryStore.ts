import { createMemoryEngine } from "./memoryEngine.js";
import { storeOn } from "./storeOn.js";
import type { Store } from "./store.js";

/** A store whose data are gone with the page: for tests, and for a browser that allows no storage. */
export function createMemoryStore(): Store {
  return storeOn(createMemoryEngine());
}
