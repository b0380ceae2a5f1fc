/** What gets a sniffer back: one piece, loaded after the first screen stands. */
import { computed, type ReadonlySignal } from "@preact/signals";
import { createKnownSniffers, type KnownSniffersControl } from "./knownSniffersControl.js";
import type { Ports } from "./ports.js";
import { availabilitySignal, inSightSignal } from "./radioWatch.js";
import { createReconnectLoop, type ReconnectLoop } from "./reconnectLoop.js";
import type { SnifferControl } from "./snifferControl.js";

export interface ReachRest {
  readonly radioOff: ReadonlySignal<boolean | null>;
  readonly loop: ReconnectLoop;
  readonly known: KnownSniffersControl;
}

export function createReachRest(ports: Ports, sniffers: SnifferControl): ReachRest {
  const availability = availabilitySignal(ports.bluetooth);
  return {
    radioOff: computed(() => (availability.value === null ? null : availability.value === "unavailable")),
    loop: createReconnectLoop({ sniffers, availability, inSight: inSightSignal(), random: Math.random }),
    known: createKnownSniffers(ports, sniffers),
  };
}
