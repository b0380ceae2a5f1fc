/** The virtual cook: knows the night market's dishes and puts plates under the virtual sniffer. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { virtualSource } from "./virtualSource.js";
import type { VirtualLink } from "./virtualLink.js";
import type { SnifferSource } from "./snifferControl.js";
import type { Ports } from "./ports.js";
import type { PracticeDish } from "./practice.js";

export const VIRTUAL_SNIFFER_NAME = "Virtual sniffer";

export interface PracticeKitchen {
  readonly dishes: ReadonlySignal<readonly PracticeDish[]>;
  /** The virtual sniffer, for whoever pairs it. */
  source(): SnifferSource;
  /** The dish of an id, or one by chance; null before the virtual sniffer was opened. */
  choose(dishId: string | null): PracticeDish | null;
  /** Puts a plate of the dish under the virtual sniffer, or takes it away. */
  serve(dish: PracticeDish | null): void;
}

export function createPracticeKitchen(ports: Ports): PracticeKitchen {
  const dishes = signal<readonly PracticeDish[]>([]);
  let link: VirtualLink | null = null;
  return {
    dishes,
    source: () =>
      virtualSource(VIRTUAL_SNIFFER_NAME, ports.nowMs() % 2 ** 31, (opened) => {
        link = opened;
        dishes.value = opened.dishes;
      }),
    choose: (dishId) => {
      const all = dishes.value;
      const byChance = all[Math.floor(Math.random() * all.length)];
      return all.find(({ id }) => id === dishId) ?? byChance ?? null;
    },
    serve: (dish) => link?.serve(dish?.id ?? null),
  };
}
