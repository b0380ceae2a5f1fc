/**
 * What stands behind the GATT server: a sniffer that answers reads and writes and sends notifications, whatever it
 * measures with. The Bluetooth side knows no more of it than this.
 */
import type { CharacteristicAddress } from "../kernel/link.js";
import type { Result } from "../kernel/result.js";

/** Bytes that the sniffer sends unasked. */
export interface PeripheralNotification {
  readonly address: CharacteristicAddress;
  readonly bytes: Uint8Array;
}

/** Why a read brought nothing. */
export type ReadRefusal =
  | "absent" // this sniffer does not have it
  | "refused" // it has it, and it is not for reading
  | "unknown"; // it has it, and has no value at the moment: read again later

export interface Peripheral {
  /** What it has, in the order of PROFILE.md section 3. */
  readonly addresses: readonly CharacteristicAddress[];
  read(address: CharacteristicAddress): Result<Uint8Array, ReadRefusal>;
  /** A write with response. @returns the ATT error it is answered with, 0 where the write was taken */
  write(address: CharacteristicAddress, bytes: Uint8Array): number;
  /** One listener; it gets each notification, subscribed to or not. */
  onNotification(listener: (notification: PeripheralNotification) => void): void;
  /** Begins to measure. */
  start(): void;
  /** Ends everything and leaves the heaters off; settles when that is done. */
  stop(): Promise<void>;
}

/** Time as the edge hands it in. */
export interface Clock {
  /** Milliseconds since switching on, never backwards. */
  nowMs(): number;
  /** Settles after so many milliseconds, or as soon as `signal` aborts. */
  wait(ms: number, signal: AbortSignal): Promise<void>;
}
