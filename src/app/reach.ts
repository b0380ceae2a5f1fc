/** Reaching a sniffer again: by itself after a loss, and without the chooser where the browser remembers it. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { KnownSniffer } from "../flows/knownSniffers.js";
import type { ReconnectState } from "../flows/reconnectState.js";
import type { Ports } from "./ports.js";
import type { ReachRest } from "./reachRest.js";
import type { SnifferControl } from "./snifferControl.js";
import { untilHere } from "./pieces.js";

export interface Reach {
  /** The browser says that its radio is off, missing or forbidden; null until it says anything. */
  readonly radioOff: ReadonlySignal<boolean | null>;
  readonly reconnecting: ReadonlySignal<ReconnectState>;
  /** Until the next try, whole seconds rounded up; null where none is due. */
  readonly secondsLeft: ReadonlySignal<number | null>;
  /** Last used first; null until they are read. */
  readonly known: ReadonlySignal<readonly KnownSniffer[] | null>;
  /** Loads all this and what speaks with a sniffer, and reads which sniffers are known. */
  load(): Promise<void>;
  tryNow(): void;
  giveUp(): void;
  /** Connects without the chooser. */
  connect(deviceId: string): Promise<void>;
  forget(sniffer: KnownSniffer): Promise<void>;
}

const OFF: ReconnectState = { kind: "off" };

export function createReach(ports: Ports, sniffers: SnifferControl): Reach {
  const rest = signal<ReachRest | null>(null);

  async function load(): Promise<ReachRest> {
    const [{ createReachRest }] = await Promise.all([
      untilHere(() => import("./reachRest.js")),
      sniffers.warmUp(),
    ]);
    rest.value ??= createReachRest(ports, sniffers);
    await rest.value.known.load();
    return rest.value;
  }

  return {
    radioOff: computed(() => rest.value?.radioOff.value ?? null),
    reconnecting: computed(() => rest.value?.loop.state.value ?? OFF),
    secondsLeft: computed(() => rest.value?.loop.secondsLeft.value ?? null),
    known: computed(() => rest.value?.known.known.value ?? null),
    load: async () => void (await load()),
    tryNow: () => rest.value?.loop.tryNow(),
    giveUp: () => rest.value?.loop.giveUp(),
    connect: async (deviceId) => (rest.value ?? (await load())).known.connect(deviceId),
    forget: async (sniffer) => (rest.value ?? (await load())).known.forget(sniffer),
  };
}
