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
    /** Frames that took over 50 ms, and what ran in them. @see W3C, Long Animation Frames API */
    longFrames?: Span[];
  }
}

interface Timing extends PerformanceEventTiming {
  readonly interactionId: number;
}

interface LongFrame extends PerformanceEntry {
  /** When style, layout and paint began. */
  readonly renderStart: number;
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
      for (const { scripts, startTime, duration, renderStart } of list.getEntries() as LongFrame[]) {
        const ran = scripts.map(
          (one) => `${Math.round(one.duration)} ${one.sourceFunctionName || one.invoker}`,
        );
        const drawn = renderStart === 0 ? 0 : Math.round(startTime + duration - renderStart);
        const what = `frame of ${Math.round(duration)} ms: ${[...ran, `${drawn} drawing`].join(", ")}`;
        frames.push({ startMs: startTime, endMs: startTime + duration, what });
      }
    }).observe({ type: "long-animation-frame", buffered: true });
  });
}

/** Those since the last call; a slow one names the long frames that it fell into. */
export const takeInteractions = (page: Page, slowMs: number): Promise<Interaction[]> =>
  page.evaluate((slow) => {
    const frames = window.longFrames?.splice(0) ?? [];
    return (window.interactions?.splice(0) ?? []).map(({ ms, startMs, endMs, what }) => {
      if (ms <= slow) return { ms, what };
      const meanwhile = frames.filter((frame) => frame.endMs > startMs && frame.startMs < endMs);
      return { ms, what: `${what} [${meanwhile.map((frame) => frame.what).join("; ")}]` };
    });
  }, slowMs);
