/** Keeps the screen awake while a sniff runs, and taps the hand when a phase changes. Both may be missing. */

const PHASE_BUZZ_MS = 60;

export function buzz(): void {
  if (typeof navigator.vibrate === "function") navigator.vibrate(PHASE_BUZZ_MS);
}

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
