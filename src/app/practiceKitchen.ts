/** The virtual cook: knows the night market's dishes and puts plates under the virtual sniffer. */
import { signal, type ReadonlySignal, type Signal } from "@preact/signals";
import type { CheckState } from "../flows/checkState.js";
import type { PracticeFault } from "../kernel/practiceFault.js";
import { virtualSource } from "./virtualSource.js";
import type { VirtualTable } from "./virtualTable.js";
import type { SnifferSource } from "./snifferControl.js";
import type { Ports } from "./ports.js";
import type { PracticeDish } from "./practice.js";

export const VIRTUAL_SNIFFER_NAME = "Virtual sniffer";

export interface PracticeKitchen {
  readonly dishes: ReadonlySignal<readonly PracticeDish[]>;
  /** What goes wrong with the virtual sniffer. Kept nowhere: a reload puts all of it right. */
  readonly faults: Signal<readonly PracticeFault[]>;
  /** The virtual sniffer, for whoever pairs it. */
  source(): SnifferSource;
  /** The dish of an id, or one by chance; null before the virtual sniffer was opened. */
  choose(dishId: string | null): PracticeDish | null;
  /** Puts the dish under the sniffer for the headspace. An interruption takes no plate away: it stands there still. */
  follow(phase: CheckState["phase"], dish: PracticeDish | null): void;
}

export function createPracticeKitchen(ports: Ports): PracticeKitchen {
  const dishes = signal<readonly PracticeDish[]>([]);
  const faults = signal<readonly PracticeFault[]>([]);
  let table: VirtualTable | null = null;
  let isServed = false;
  return {
    dishes,
    faults,
    source: () =>
      virtualSource(VIRTUAL_SNIFFER_NAME, ports.nowMs() % 2 ** 31, faults, (laid) => {
        table = laid;
        dishes.value = laid.dishes;
      }),
    choose: (dishId) => {
      const all = dishes.value;
      const byChance = all[Math.floor(Math.random() * all.length)];
      return all.find(({ id }) => id === dishId) ?? byChance ?? null;
    },
    follow: (phase, dish) => {
      const isWanted = phase === "headspace";
      if (phase === "interrupted" || (isWanted && isServed)) return;
      isServed = isWanted;
      table?.serve(isWanted ? (dish?.id ?? null) : null);
    },
  };
}
