/** From a tap or key press to the next frame, as the browser itself measures it. @see W3C, Event Timing API */
import type { Page } from "playwright-core";

export interface Interaction {
  /** Rounded to 8 ms by the browser; 0 where it took less than 16 ms. */
  readonly ms: number;
  /** Kind of the event, how long it waited, and the time that its listeners took. */
  readonly what: string;
}

interface Span {
  readonly startMs: number;
  readonly endMs: number;
  readonly what: string;
}

declare global {
  interface Window {
    interactions?: (Span & { readonly ms: number })[];
    /** What ran in frames that took over 50 ms. @see W3C, Long Animation Frames API */
    longFrames?: Span[];
  }
}

interface Timing extends PerformanceEventTiming {
  readonly interactionId: number;
}

interface LongFrame extends PerformanceEntry {
  readonly scripts: readonly {
    readonly invoker: string;
    readonly sourceFunctionName: string;
    readonly startTime: number;
    readonly duration: number;
  }[];
}

/** Begins with each document that the page loads. */
export async function recordInteractions(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const found: NonNullable<Window["interactions"]> = (window.interactions = []);
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as Timing[]) {
        if (entry.interactionId === 0) continue;
        const listeners = Math.round(entry.processingEnd - entry.processingStart);
        const waited = Math.round(entry.processingStart - entry.startTime);
        const startMs = entry.startTime;
        const what = `(${entry.name}: waited ${waited}, ran ${listeners})`;
        found.push({ ms: entry.duration, startMs, endMs: startMs + entry.duration, what });
      }
    }).observe({ type: "event", durationThreshold: 16, buffered: true } as PerformanceObserverInit);
    const frames: NonNullable<Window["longFrames"]> = (window.longFrames = []);
    new PerformanceObserver((list) => {
      for (const { scripts } of list.getEntries() as LongFrame[])
        for (const { invoker, sourceFunctionName, startTime, duration } of scripts) {
          const what = `${Math.round(duration)} ms ${sourceFunctionName || invoker}`;
          frames.push({ startMs: startTime, endMs: startTime + duration, what });
        }
    }).observe({ type: "long-animation-frame", buffered: true });
  });
}

/** Those since the last call; a slow one names the scripts that ran meanwhile. */
export const takeInteractions = (page: Page, slowMs: number): Promise<Interaction[]> =>
  page.evaluate((slow) => {
    const frames = window.longFrames?.splice(0) ?? [];
    return (window.interactions?.splice(0) ?? []).map(({ ms, startMs, endMs, what }) => {
      if (ms <= slow) return { ms, what };
      const meanwhile = frames.filter((frame) => frame.endMs > startMs && frame.startMs < endMs);
      return { ms, what: `${what} [${meanwhile.map((frame) => frame.what).join("; ")}]` };
    });
  }, slowMs);
