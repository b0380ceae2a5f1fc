/** The browser's own chooser, asked for a sniffer. */
import { err, ok, type Result } from "../kernel/result.js";

/** Why no sniffer was chosen. `noneChosen` is a normal end: the screen stays as it was. */
export type ChooseError =
  | { readonly kind: "unsupported" } // this browser has no Web Bluetooth: use another, or practise without
  | { readonly kind: "noneChosen" } // chooser closed, nothing in range, or no radio: try again nearer
  | { readonly kind: "notAllowed" } // no tap behind the call, or a policy forbids it: ask whoever set the policy
  | { readonly kind: "unexpected"; readonly detail: string };

/** Which devices to offer, as lower-case 128-bit service UUIDs. */
export interface WantedServices {
  /** A device must advertise this one. */
  readonly advertised: string;
  /** Those the page may use besides; the browser keeps all others from it. */
  readonly alsoUsed: readonly string[];
}

/**
 * Opens the chooser; needs a tap just before. Never throws.
 *
 * @see Web Bluetooth draft, "request Bluetooth devices" (NotFoundError, SecurityError)
 */
export async function chooseSniffer(
  bluetooth: Bluetooth | undefined,
  { advertised, alsoUsed }: WantedServices,
): Promise<Result<BluetoothDevice, ChooseError>> {
  if (bluetooth === undefined) return err({ kind: "unsupported" });
  try {
    const options = { filters: [{ services: [advertised] }], optionalServices: [...alsoUsed] };
    return ok(await bluetooth.requestDevice(options));
  } catch (cause) {
    const name = cause instanceof DOMException ? cause.name : "";
    if (name === "NotFoundError") return err({ kind: "noneChosen" });
    if (name === "SecurityError") return err({ kind: "notAllowed" });
    return err({ kind: "unexpected", detail: String(cause) });
  }
}
