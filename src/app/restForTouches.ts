import { untilIdle } from "./untilIdle.js";

/**
 * Work that nobody waits for rests while a finger is at work: a tap comes in several parts, and between them a page that
 * seems idle is not.
 *
 * @param target - where touches are heard
 * @param restMs - how long after each touch, milliseconds
 * @returns waits for its turn
 */
export function restForTouches(target: EventTarget, restMs: number): () => Promise<void> {
  let touchedMs = -Infinity;
  target.addEventListener(
    "pointerdown",
    () => {
      touchedMs = performance.now();
    },
    { capture: true, passive: true },
  );
  return async () => {
    await untilIdle();
    for (let leftMs = left(); leftMs > 0; leftMs = left()) {
      await new Promise((resume) => setTimeout(resume, leftMs));
      await untilIdle();
    }
  };

  function left(): number {
    return touchedMs + restMs - performance.now();
  }
}
