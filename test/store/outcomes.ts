import type { Result } from "../../src/kernel/result.js";
import type { StoreError } from "../../src/store/storeError.js";

/** The value, or a throw that names the error. */
export async function got<T>(outcome: Promise<Result<T, StoreError>>): Promise<T> {
  const settled = await outcome;
  if (settled.ok) return settled.value;
  throw new Error(`refused: ${JSON.stringify(settled.error)}`);
}

/** The error, or a throw. */
export async function refused<T>(outcome: Promise<Result<T, StoreError>>): Promise<StoreError> {
  const settled = await outcome;
  if (!settled.ok) return settled.error;
  throw new Error(`was not refused: ${JSON.stringify(settled.value)}`);
}
