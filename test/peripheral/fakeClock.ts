import type { Clock } from "../../src/peripheral/peripheral.js";

export interface FakeClock extends Clock {
  /** Lets time pass, waking every waiter at its own moment; between two moments all pending work is done. */
  pass(ms: number): Promise<void>;
}

/** Time that stands still until it is told to pass. For work that waits on nothing but this clock. */
export function fakeClock(): FakeClock {
  let nowMs = 0;
  let waiters: { atMs: number; resolve: () => void }[] = [];
  const settle = () => new Promise<void>((resolve) => setImmediate(resolve));
  return {
    nowMs: () => nowMs,
    wait: (ms, signal) =>
      new Promise((resolve) => {
        if (signal.aborted) return resolve();
        const end = (): void => {
          signal.removeEventListener("abort", end);
          resolve();
        };
        signal.addEventListener("abort", end);
        waiters.push({ atMs: nowMs + Math.max(0, ms), resolve: end });
      }),
    pass: async (ms) => {
      const untilMs = nowMs + ms;
      await settle();
      for (;;) {
        const next = Math.min(...waiters.map(({ atMs }) => atMs));
        if (!(next <= untilMs)) break;
        nowMs = Math.max(nowMs, next);
        const due = waiters.filter(({ atMs }) => atMs <= nowMs);
        waiters = waiters.filter(({ atMs }) => atMs > nowMs);
        due.forEach(({ resolve }) => resolve());
        await settle();
      }
      nowMs = untilMs;
      await settle();
    },
  };
}
