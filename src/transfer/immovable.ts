import { type Channel, sameChannels } from "../kernel/channel.js";
import type { Nose } from "../nose/nose.js";

/** Why a nose can never be moved to a sniffer, whatever was sniffed on both. */
export type Immovable =
  | { readonly kind: "alreadyMoved" } // moved once: move the nose that was taught, and not its copy
  | { readonly kind: "sameSniffer" } // the nose was taught on this one: nothing to move
  | { readonly kind: "otherChannels" }; // other sensors or heater steps: teach a nose on it

/** null if pairs of plates may show how the two sniffers differ. */
export function immovable(
  nose: Pick<Nose, "sniffer" | "transfer">,
  sniffer: { readonly id: string; readonly channels: readonly Channel[] },
): Immovable | null {
  if (nose.transfer !== undefined) return { kind: "alreadyMoved" };
  if (sniffer.id === nose.sniffer.id) return { kind: "sameSniffer" };
  return sameChannels(nose.sniffer.channels, sniffer.channels) ? null : { kind: "otherChannels" };
}
