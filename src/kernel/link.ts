/**
 * The port between the app and a sniffer: bytes in, bytes out, typed errors. It knows no meaning of a byte.
 * `radio/` fills it over Web Bluetooth, `app/` fills it with the virtual sniffer.
 */
import type { Result } from "./result.js";

/** One GATT characteristic, as two lower-case 128-bit UUIDs. */
export interface CharacteristicAddress {
  readonly service: string;
  readonly characteristic: string;
}

/** Why a GATT call brought nothing. */
export type LinkError =
  | { readonly kind: "lost" } // the sniffer went out of range or was switched off: come closer, reconnect
  | { readonly kind: "absent"; readonly address: CharacteristicAddress } // this sniffer does not have it
  | { readonly kind: "refused"; readonly detail: string } // it has it and said no
  | { readonly kind: "unexpected"; readonly detail: string };

/** A connected sniffer. Calls are serialised by whoever fills this in. */
export interface Link {
  readonly name: string;
  read(address: CharacteristicAddress): Promise<Result<Uint8Array, LinkError>>;
  write(address: CharacteristicAddress, bytes: Uint8Array): Promise<Result<void, LinkError>>;
  /** `onBytes` gets each notification; the promise settles when the subscription stands. */
  subscribe(
    address: CharacteristicAddress,
    onBytes: (bytes: Uint8Array) => void,
  ): Promise<Result<void, LinkError>>;
  /** Called once when the connection ends without `close`. */
  onLost(listener: () => void): void;
  close(): void;
}

/** Do two addresses name the same characteristic? */
export function sameAddress(left: CharacteristicAddress, right: CharacteristicAddress): boolean {
  return left.service === right.service && left.characteristic === right.characteristic;
}
