/** Keeps the screen awake while a sniff runs, and taps the hand when a phase changes. Both may be missing. */

import type { CheckState } from "../flows/checkState.js";

/** Buzz and pause by turns, in milliseconds: what the hand has to do can be told without a look. */
const PATTERNS: Readonly<Record<CheckState["phase"], readonly number[]>> = {
  idle: [],
  warming: [60],
  cleanAir: [60],
  overPlate: [80, 80, 80], // your turn
  headspace: [60],
  interrupted: [250],
  done: [200, 100, 60],
};

/** Buzzes for the phase that begins, where the phone can. */
export function buzz(phase: CheckState["phase"]): void {
  if (typeof navigator.vibrate === "function") navigator.vibrate([...PATTERNS[phase]]);
}

/** What holds where nothing was chosen: whoever wants little motion on screen is not shaken either. */
export const buzzesByDefault = (): boolean => !matchMedia("(prefers-reduced-motion: reduce)").matches;

export interface WakeKeeper {
  keep(on: boolean): Promise<void>;
}

/** The browser lets the lock go when the page is hidden; it is asked for again when the page comes back. */
export function createWakeKeeper(): WakeKeeper {
  let wanted = false;
  let lock: WakeLockSentinel | null = null;

  async function take(): Promise<void> {
    if (!wanted || !("wakeLock" in navigator) || document.visibilityState !== "visible") return;
    try {
      lock = await navigator.wakeLock.request("screen");
      if (!wanted) await lock.release();
    } catch {
      lock = null; // refused, as with a low battery: the sniff goes on all the same
    }
  }

  document.addEventListener("visibilitychange", () => void take());
  return {
    keep: async (on) => {
      wanted = on;
      if (on) return take();
      await lock?.release();
      lock = null;
    },
  };
}
