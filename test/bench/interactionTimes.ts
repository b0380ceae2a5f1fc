/** From a tap or key press to the next frame, as the browser itself measures it. @see W3C, Event Timing API */
import type { Page } from "playwright-core";

export interface Interaction {
  /** Rounded to 8 ms by the browser; 0 where it took less than 16 ms. */
  readonly ms: number;
  /** Kind of the event, and the time that its listeners took. */
  readonly what: string;
}

declare global {
  interface Window {
    interactions?: Interaction[];
  }
}

interface Timing extends PerformanceEventTiming {
  readonly interactionId: number;
}

/** Begins with each document that the page loads. */
export async function recordInteractions(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const found: Interaction[] = (window.interactions = []);
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as Timing[]) {
        if (entry.interactionId === 0) continue;
        const listeners = Math.round(entry.processingEnd - entry.processingStart);
        const waited = Math.round(entry.processingStart - entry.startTime);
        found.push({ ms: entry.duration, what: `(${entry.name}: waited ${waited}, ran ${listeners})` });
      }
    }).observe({ type: "event", durationThreshold: 16, buffered: true } as PerformanceObserverInit);
  });
}

/** Those since the last call. */
export const takeInteractions = (page: Page): Promise<Interaction[]> =>
  page.evaluate(() => window.interactions?.splice(0) ?? []);
