import type { Breathe } from "../kernel/breathe.js";

/** Work goes on so long before a tap has its turn: less than a picture at sixty a second. */
const TURN_MS = 12;

/** Gives way every few milliseconds: a browser lets a tap and the next picture go before a timer. */
export function breather(): Breathe {
  let sinceMs = performance.now();
  return () => {
    if (performance.now() - sinceMs < TURN_MS) return undefined;
    return new Promise((resume) =>
      setTimeout(() => {
        sinceMs = performance.now();
        resume();
      }),
    );
  };
}
