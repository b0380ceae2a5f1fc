import { untilIdle } from "./untilIdle.js";

/**
 * Work that nobody waits for rests while a finger is at work: a tap comes in several parts, and between them a page that
 * seems idle is not.
 *
 * @param target - where touches are heard
 * @returns waits until the page is idle and so many milliseconds have gone by since the last touch
 */
export function restForTouches(target: EventTarget): (restMs: number) => Promise<void> {
  let touchedMs = -Infinity;
  target.addEventListener(
    "pointerdown",
    () => {
      touchedMs = performance.now();
    },
    { capture: true, passive: true },
  );
  return async (restMs) => {
    for (;;) {
      await untilIdle();
      const leftMs = touchedMs + restMs - performance.now();
      if (leftMs <= 0) return;
      await new Promise((resume) => setTimeout(resume, leftMs));
    }
  };
}
