import { ok, type Result } from "../kernel/result.js";
import { openDexieEngine, type DexieEngineOptions } from "./dexieEngine.js";
import { retrySetAside } from "./setAside.js";
import type { Store } from "./store.js";
import type { StoreError } from "./storeError.js";
import { storeOn } from "./storeOn.js";

/** The database of the app. */
export const DATABASE_NAME = "nidor";

/** Opens the store on this phone. Records that an older version set aside and this one can read come back first. */
export async function openDexieStore(
  options: Partial<DexieEngineOptions> = {},
): Promise<Result<Store, StoreError>> {
  const engine = await openDexieEngine({ name: DATABASE_NAME, ...options });
  if (!engine.ok) return engine;
  const retried = await retrySetAside(engine.value);
  // Without room for the move they stay set aside; everything else can be read.
  if (!retried.ok && retried.error.kind !== "quota") {
    engine.value.close();
    return retried;
  }
  return ok(storeOn(engine.value));
}
