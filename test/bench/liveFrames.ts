/** How smooth the live traces stay in the real app: ten sweeps a second, an hour of them already drawn. */
import type { Page } from "playwright-core";

/** @see W3C, Long Tasks API: from 50 ms on a person may feel a wait */
export const LONG_FRAME_MS = 50;

export interface Frames {
  readonly count: number;
  readonly meanMs: number;
  readonly longestMs: number;
  /** Frames that took longer than `LONG_FRAME_MS`. */
  readonly long: number;
}

export interface LiveFrames {
  /** The same page with the same hour on it, before it listens. */
  readonly idle: Frames;
  /** While it listens, by the stretch of time that is shown. */
  readonly live: Readonly<Record<string, Frames>>;
  /** Sweeps that had been drawn when the frames were counted. */
  readonly sweepsBefore: number;
  readonly sweepsPerSecond: number;
}

/** An hour at ten a second. */
const SWEEPS_BEFORE = 36_000;
const COUNTED_MS = 15_000;
const WINDOWS = ["1 min", "10 min", "60 min"];
/** The virtual sniffer sweeps in 2 s, and practice runs eight times faster: a sweep every 250 ms of its table. */
const SWEEP_MS = 250;
/** What its table takes for its timer, and the longest step that it takes at once. */
const TABLE_TICK_MS = 100;
const LONGEST_STEP_MS = 1000;

declare global {
  interface Window {
    pace?: { tickMs: number; stepMs: number; sweeps: number };
  }
}

/** Lets the virtual sniffer's table run as `window.pace` says: so much of its time a tick, a tick so often. */
export async function paceTheTable(page: Page): Promise<void> {
  await page.addInitScript("globalThis.__name ??= (named) => named"); // the builder of scripts calls it
  await page.addInitScript(
    ([ordinaryMs, sweepMs]) => {
      const pace = (window.pace = { tickMs: ordinaryMs, stepMs: ordinaryMs, sweeps: 0 });
      const [plainInterval, plainNow] = [window.setInterval, performance.now.bind(performance)];
      let aheadMs = 0;
      performance.now = () => plainNow() + aheadMs;
      window.setInterval = ((act: () => void, everyMs?: number) => {
        if (everyMs !== ordinaryMs) return plainInterval(act, everyMs);
        let lastMs = performance.now();
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          aheadMs += Math.max(0, lastMs + pace.stepMs - performance.now());
          lastMs = performance.now();
          pace.sweeps += pace.stepMs / sweepMs;
          act();
          setTimeout(() => port2.postMessage(null), pace.tickMs);
        };
        port2.postMessage(null);
        return 0;
      }) as typeof window.setInterval;
    },
    [TABLE_TICK_MS, SWEEP_MS] as const,
  );
}

/** @param slower - how many times the processor is slowed while frames are counted */
export async function liveFrames(page: Page, url: string, slower: number): Promise<LiveFrames> {
  const button = (name: string) => page.getByRole("button", { name, exact: true });
  const session = await page.context().newCDPSession(page);
  const setPace = (tickMs: number, stepMs: number) =>
    page.evaluate(([tick, step]) => Object.assign(window.pace ?? {}, { tickMs: tick, stepMs: step }), [
      tickMs,
      stepMs,
    ] as const);
  const sweeps = () => page.evaluate(() => window.pace?.sweeps ?? 0);

  await page.goto(`${url}#/nose/live`);
  await button("Use the virtual sniffer").click();
  await button("Start listening").click();
  await setPace(0, LONGEST_STEP_MS);
  while ((await sweeps()) < SWEEPS_BEFORE) await page.waitForTimeout(500);
  await setPace(TABLE_TICK_MS, SWEEP_MS);
  const sweepsBefore = Math.round(await sweeps());

  await session.send("Emulation.setCPUThrottlingRate", { rate: slower });
  const live: Record<string, Frames> = {};
  let counted = 0;
  for (const window of WINDOWS) {
    await page.getByLabel(window, { exact: true }).click();
    const from = await sweeps();
    live[window] = await countFrames(page);
    counted += (await sweeps()) - from;
  }
  await button("Stop listening").click();
  await button("Start listening").waitFor();
  const idle = await countFrames(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  const sweepsPerSecond = counted / ((WINDOWS.length * COUNTED_MS) / 1000);
  return { idle, live, sweepsBefore, sweepsPerSecond };
}

/** @param print - a line each: the idle page, and each stretch of time against it */
export function printFrames({ idle, live, ...sweeps }: LiveFrames, print: (line: string) => void): void {
  const line = (name: string, { count, meanMs, longestMs, long }: Frames) =>
    print(
      `${name}: ${long} of ${count} frames over ${LONG_FRAME_MS} ms, longest ${longestMs.toFixed(0)} ms, ` +
        `mean ${meanMs.toFixed(1)} ms, ${(meanMs / idle.meanMs).toFixed(2)} times the idle page's`,
    );
  print(
    `live traces, ${sweeps.sweepsPerSecond.toFixed(1)} sweeps a second after ${sweeps.sweepsBefore} of them`,
  );
  line("  idle page", idle);
  for (const [window, frames] of Object.entries(live)) line(`  ${window}`, frames);
}

const countFrames = (page: Page): Promise<Frames> =>
  page.evaluate(
    async ([forMs, longMs]) => {
      const took: number[] = [];
      await new Promise<void>((done) => {
        let before: number | null = null;
        let left = forMs;
        const frame = (atMs: number) => {
          if (before !== null) took.push(atMs - before);
          left -= before === null ? 0 : atMs - before;
          before = atMs;
          if (left > 0) requestAnimationFrame(frame);
          else done();
        };
        requestAnimationFrame(frame);
      });
      const sum = took.reduce((all, ms) => all + ms, 0);
      const long = took.filter((ms) => ms > longMs).length;
      return { count: took.length, meanMs: sum / took.length, longestMs: Math.max(...took), long };
    },
    [COUNTED_MS, LONG_FRAME_MS] as const,
  );
