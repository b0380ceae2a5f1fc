import { ok, type Result } from "../kernel/result.js";
import { openDexieEngine, type DexieEngineOptions } from "./dexieEngine.js";
import { retrySetAside } from "./setAside.js";
import type { Store } from "./store.js";
import type { StoreError } from "./storeError.js";
import { storeOn } from "./storeOn.js";

/** The database of the app. */
export const DATABASE_NAME = "nidor";

/** A place apart from the database that remembers that there was one; the browser's localStorage fits. */
export type LossMark = Pick<Storage, "getItem" | "setItem">;

export interface DexieStoreOptions extends Partial<DexieEngineOptions> {
  /** Default: the page's localStorage, where it may be used. */
  readonly lossMark?: LossMark | undefined;
}

/** Opens the store on this phone. Records that an older version set aside and this one can read come back first. */
export async function openDexieStore(options: DexieStoreOptions = {}): Promise<Result<Store, StoreError>> {
  const { lossMark, ...engineOptions } = { name: DATABASE_NAME, lossMark: pageMark(), ...options };
  const engine = await openDexieEngine(engineOptions);
  if (!engine.ok) return engine;
  const retried = await retrySetAside(engine.value);
  // Without room for the move they stay set aside; everything else can be read.
  if (!retried.ok && retried.error.kind !== "quota") {
    engine.value.close();
    return retried;
  }
  return ok(storeOn(engine.value, wasLost(engine.value.wasCreated, engineOptions.name, lossMark)));
}

/**
 * Browsers throw a damaged database away and hand out an empty one without a word. Chromium does it when it was
 * killed between the two parts of one record of its log, wrote on behind the torn one, and was started again.
 */
function wasLost(wasCreated: boolean, name: string, mark: LossMark | undefined): boolean {
  const key = `${name}-was-here`;
  try {
    const wasHere = mark?.getItem(key) === "yes";
    mark?.setItem(key, "yes");
    return wasCreated && wasHere;
  } catch {
    return false; // no place for a mark, as in some private windows
  }
}

function pageMark(): LossMark | undefined {
  try {
    return globalThis.localStorage;
  } catch {
    return undefined; // forbidden, as in some private windows
  }
}
