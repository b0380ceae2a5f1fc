import type { ReadonlySignal } from "@preact/signals";
import type { CharacteristicAddress, Link, LinkError } from "../kernel/link.js";
import type { PracticeFault } from "../kernel/practiceFault.js";
import { seededRandom } from "../kernel/random.js";
import { err, ok, type Result } from "../kernel/result.js";
import { NIGHT_MARKET, plateOf, truthsOf } from "../virtual/dishes.js";
import { beginMishaps, MISHAP_AFTER_MS, SECOND_UNIT, withPractice } from "../virtual/practise.js";
import {
  advance,
  createVirtualSniffer,
  readValue,
  serve,
  writeValue,
  type VirtualSniffer,
} from "../virtual/virtualSniffer.js";
import { PRACTICE_JAR, PRACTICE_SPEED, type PracticeDish } from "./practice.js";

const STEP_MS = 100;
/** A week after the last evening on which the demo nose was taught. */
const DAYS_OF_USE = 91;

/** The sniffer that exists only as numbers, and the virtual cook who puts plates under it. */
export interface VirtualTable {
  /** What the virtual cook can serve. */
  readonly dishes: readonly PracticeDish[];
  /** Puts a fresh plate of the dish of this id under the sniffer; null takes it away. */
  serve(dishId: string | null): void;
  /** A link to it; after a loss another one, to the same sniffer. */
  open(): Link;
}

/**
 * Runs a virtual sniffer on a timer and speaks for it as a radio would.
 *
 * @param seed - same seed, same sniffer and same plates
 * @param faults - what goes wrong with it, from the moment it is chosen; which unit it is shows at the start only
 * @param speed - how many device milliseconds pass in a real one
 */
export function layVirtualTable(
  name: string,
  seed: number,
  faults: ReadonlySignal<readonly PracticeFault[]>,
  speed = PRACTICE_SPEED,
): VirtualTable {
  const random = seededRandom(seed ^ 0x9e3779b9);
  const unitNumber = faults.value.includes("spread") ? SECOND_UNIT : 1;
  let sniffer: VirtualSniffer = createVirtualSniffer({
    seed,
    ageDays: DAYS_OF_USE,
    faults: { unitNumber },
  });
  let lastMs = performance.now();
  let losesLinkAtMs = Infinity;

  function open(): Link {
    // Nobody listened: meanwhile its time ran as on the wall, and what it sent is gone.
    sniffer = advance(sniffer, Math.max(0, Math.round(performance.now() - lastMs))).sniffer;
    lastMs = performance.now();
    const listeners = new Map<string, (bytes: Uint8Array) => void>();
    let isOpen = true;
    let onLost = (): void => undefined;
    const stopFollowing = faults.subscribe((chosen) => {
      sniffer = withPractice(sniffer, chosen);
    });
    const timer = setInterval(() => {
      const nowMs = performance.now();
      // A sleeping tab wakes to a jump in time: a jump is no sniff, so it is cut short.
      const elapsedMs = Math.min(nowMs - lastMs, 10 * STEP_MS);
      lastMs = nowMs;
      const advanced = advance(sniffer, Math.round(elapsedMs * speed));
      sniffer = advanced.sniffer;
      for (const { address, bytes } of advanced.notifications) listeners.get(keyOf(address))?.(bytes);
      if (sniffer.elapsedMs < losesLinkAtMs) return;
      losesLinkAtMs = Infinity;
      close();
      onLost();
    }, STEP_MS);
    const close = (): void => {
      isOpen = false;
      clearInterval(timer);
      stopFollowing();
      listeners.clear();
    };
    return {
      name,
      read: (address) => Promise.resolve(isOpen ? readFrom(sniffer, address) : LOST),
      write: (address, bytes) => {
        if (!isOpen) return Promise.resolve(LOST);
        const written = writeValue(sniffer, address, bytes);
        sniffer = written.sniffer;
        if (written.attError === 0) return Promise.resolve(ok(undefined));
        return Promise.resolve(err({ kind: "refused", detail: `ATT error ${written.attError}` }));
      },
      subscribe: (address, onBytes) => {
        if (!isOpen) return Promise.resolve(LOST);
        listeners.set(keyOf(address), onBytes);
        return Promise.resolve(ok(undefined));
      },
      onLost: (listener) => {
        onLost = listener;
      },
      close,
    };
  }

  return {
    dishes: NIGHT_MARKET.map((dish) => ({ id: dish.id, name: dish.name, groups: truthsOf(dish) })),
    serve: (dishId) => {
      const dish = NIGHT_MARKET.find(({ id }) => id === dishId);
      // A check jar must be the same each time; a plate never is.
      const chance = dishId === PRACTICE_JAR ? seededRandom(1) : random;
      sniffer = serve(sniffer, dish === undefined ? null : plateOf(dish, chance));
      losesLinkAtMs = Infinity;
      if (dish === undefined) return;
      sniffer = beginMishaps(sniffer, faults.value);
      if (faults.value.includes("link")) losesLinkAtMs = sniffer.elapsedMs + MISHAP_AFTER_MS;
    },
    open,
  };
}

const LOST = err({ kind: "lost" } as const);

const keyOf = ({ service, characteristic }: CharacteristicAddress): string => `${service}/${characteristic}`;

function readFrom(sniffer: VirtualSniffer, address: CharacteristicAddress): Result<Uint8Array, LinkError> {
  const value = readValue(sniffer, address);
  if (value.ok) return ok(value.value);
  return err(value.error === "absent" ? { kind: "absent", address } : { kind: "refused", detail: "read" });
}
