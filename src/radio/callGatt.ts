/** One GATT call, tried again where that helps, and its exceptions as typed errors. */
import type { CharacteristicAddress, LinkError } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";

/** What `callGatt` needs to know of the connection. */
export interface CallContext {
  readonly address: CharacteristicAddress;
  isConnected(): boolean;
  /** Discovers services and characteristics anew. */
  renew(): Promise<void>;
}

/**
 * Tries `call` once, and a second time after a NetworkError with the connection still up (another call was running)
 * or, all discovered anew, after an InvalidStateError (the sniffer's table changed under us). Never throws.
 *
 * @see Web Bluetooth draft, the exceptions of getPrimaryService, getCharacteristic, readValue, writeValue
 */
export async function callGatt<T>(
  context: CallContext,
  call: () => Promise<T>,
): Promise<Result<T, LinkError>> {
  const first = await attempt(context, call);
  if (first.ok) return first;
  const name = nameOf(first.error);
  if (name !== "NetworkError" && name !== "InvalidStateError") return err(toLinkError(first.error, context));
  const second = await attempt(context, async () => {
    if (name === "InvalidStateError") await context.renew();
    return call();
  });
  return second.ok ? second : err(toLinkError(second.error, context));
}

async function attempt<T>(context: CallContext, call: () => Promise<T>): Promise<Result<T, unknown>> {
  if (!context.isConnected()) return err(undefined);
  try {
    return ok(await call());
  } catch (cause) {
    return err(cause);
  }
}

function toLinkError(cause: unknown, context: CallContext): LinkError {
  if (!context.isConnected()) return { kind: "lost" };
  const name = nameOf(cause);
  if (name === "NotFoundError") return { kind: "absent", address: context.address };
  const detail = String(cause);
  return REFUSALS.includes(name) ? { kind: "refused", detail } : { kind: "unexpected", detail };
}

/** Not permitted by the sniffer, an ATT error; blocked by the browser; too long to write. */
const REFUSALS = ["NotSupportedError", "NotAllowedError", "SecurityError", "InvalidModificationError"];

const nameOf = (cause: unknown): string => (cause instanceof DOMException ? cause.name : "");
