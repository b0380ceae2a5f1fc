import type { CharacteristicAddress } from "../kernel/link.js";
import type { RandomSource } from "../kernel/random.js";
import type { Faults } from "./faults.js";

/** Bytes that the sniffer sends unasked. Whoever plays the radio passes on only what was subscribed to. */
export interface Notification {
  readonly address: CharacteristicAddress;
  readonly bytes: Uint8Array;
}

/** What of the sent notifications arrives, in order: some are lost, some come with one wrong octet. */
export function throughRadio(
  sent: readonly Notification[],
  faults: Faults,
  random: RandomSource,
): Notification[] {
  return sent.flatMap((notification) => {
    if (random() < faults.lostFraction) return [];
    if (random() >= faults.garbledFraction) return [notification];
    const bytes = Uint8Array.from(notification.bytes);
    const place = Math.floor(random() * bytes.length);
    bytes[place]! ^= 1 + Math.floor(random() * 255);
    return [{ ...notification, bytes }];
  });
}
