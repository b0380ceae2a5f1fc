/** What the pages and workers of a browser context asked for, and what the Content-Security-Policy refused them. */
import type { BrowserContext } from "playwright-core";

export interface PolicyWatch {
  /** Every address, in order. */
  readonly asked: readonly string[];
  /** What the browser said about each breach of the policy. */
  readonly refused: readonly string[];
  /** Errors that nothing caught. */
  readonly uncaught: readonly string[];
}

/** Start it before a page goes anywhere. */
export function watchPolicy(context: BrowserContext): PolicyWatch {
  const asked: string[] = [];
  const refused: string[] = [];
  const uncaught: string[] = [];
  context.on("request", (request) => asked.push(request.url()));
  context.on("console", (message) => {
    if (/content security policy/i.test(message.text())) refused.push(message.text());
  });
  context.on("weberror", (problem) => {
    // The blank page before the first address has no storage, and a test's own start script trips over that.
    if (!/localStorage.*denied for this document/.test(String(problem.error())))
      uncaught.push(String(problem.error()));
  });
  return { asked, refused, uncaught };
}

/** The addresses that are not on this origin; what a page made itself has none. */
export function outsideOf(origin: string, asked: readonly string[]): string[] {
  return asked.filter((url) => !/^(blob|data):/.test(url) && new URL(url).origin !== origin);
}
