import type { Breathe } from "../kernel/breathe.js";
import { untilIdle } from "./untilIdle.js";

/** Work goes on so long before a tap has its turn: half a picture at sixty a second. */
const TURN_MS = 8;

/** Gives way every few milliseconds, until the page has nothing better to do. */
export function breather(): Breathe {
  let sinceMs = performance.now();
  return () => {
    if (performance.now() - sinceMs < TURN_MS) return undefined;
    return untilIdle().then(() => {
      sinceMs = performance.now();
    });
  };
}
