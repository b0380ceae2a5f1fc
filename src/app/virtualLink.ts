import type { CharacteristicAddress, Link } from "../kernel/link.js";
import { err, ok } from "../kernel/result.js";
import { seededRandom } from "../kernel/random.js";
import { NIGHT_MARKET, plateOf, truthsOf } from "../virtual/dishes.js";
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

/** A link to the sniffer that exists only as numbers, and the plate that the virtual cook puts under it. */
export interface VirtualLink extends Link {
  /** What the virtual cook can serve. */
  readonly dishes: readonly PracticeDish[];
  /** Puts a fresh plate of the dish of this id under the sniffer; null takes it away. */
  serve(dishId: string | null): void;
}

/**
 * Runs a virtual sniffer on a timer and speaks for it as a radio would.
 *
 * @param seed - same seed, same sniffer and same plates
 * @param speed - how many device milliseconds pass in a real one
 */
export function openVirtualLink(name: string, seed: number, speed = PRACTICE_SPEED): VirtualLink {
  const random = seededRandom(seed ^ 0x9e3779b9);
  const listeners = new Map<string, (bytes: Uint8Array) => void>();
  let sniffer: VirtualSniffer = createVirtualSniffer({ seed, ageDays: DAYS_OF_USE });
  let lastMs = performance.now();
  const keyOf = (address: CharacteristicAddress) => `${address.service}/${address.characteristic}`;
  const timer = setInterval(() => {
    const nowMs = performance.now();
    // A sleeping tab wakes to a jump in time: a jump is no sniff, so it is cut short.
    const elapsedMs = Math.min(nowMs - lastMs, 10 * STEP_MS);
    lastMs = nowMs;
    const advanced = advance(sniffer, Math.round(elapsedMs * speed));
    sniffer = advanced.sniffer;
    for (const { address, bytes } of advanced.notifications) listeners.get(keyOf(address))?.(bytes);
  }, STEP_MS);

  return {
    name,
    read: (address) => {
      const value = readValue(sniffer, address);
      if (value.ok) return Promise.resolve(ok(value.value));
      const absent = value.error === "absent";
      return Promise.resolve(err(absent ? { kind: "absent", address } : { kind: "refused", detail: "read" }));
    },
    write: (address, bytes) => {
      const written = writeValue(sniffer, address, bytes);
      sniffer = written.sniffer;
      if (written.attError === 0) return Promise.resolve(ok(undefined));
      return Promise.resolve(err({ kind: "refused", detail: `ATT error ${written.attError}` }));
    },
    subscribe: (address, onBytes) => {
      listeners.set(keyOf(address), onBytes);
      return Promise.resolve(ok(undefined));
    },
    onLost: () => undefined,
    close: () => {
      clearInterval(timer);
      listeners.clear();
    },
    dishes: NIGHT_MARKET.map((dish) => ({ id: dish.id, name: dish.name, groups: truthsOf(dish) })),
    serve: (dishId) => {
      const dish = NIGHT_MARKET.find(({ id }) => id === dishId);
      // A check jar must be the same each time; a plate never is.
      const chance = dishId === PRACTICE_JAR ? seededRandom(1) : random;
      sniffer = serve(sniffer, dish === undefined ? null : plateOf(dish, chance));
    },
  };
}
