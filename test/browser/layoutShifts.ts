/** What moved on the page without anybody's doing. @see W3C Web Incubator CG, Layout Instability API */
import type { Page } from "playwright-core";

interface Shift {
  readonly value: number;
  readonly hadRecentInput: boolean;
  readonly sources: readonly {
    readonly node: Node | null;
    readonly previousRect: DOMRectReadOnly;
    readonly currentRect: DOMRectReadOnly;
  }[];
}

declare global {
  interface Window {
    layoutShifts?: string[];
  }
}

/** Begins with each document that the page loads. */
export async function recordShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const found: string[] = (window.layoutShifts = []);
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as unknown as Shift[]) {
        if (entry.hadRecentInput) continue;
        // No function with a name: tsx marks those by a helper that the page does not have.
        const moved = entry.sources.map(({ node, previousRect, currentRect }) => {
          const [from, to] = [previousRect, currentRect].map((at) =>
            [at.x, at.y, at.width, at.height].join(" "),
          );
          const element = node instanceof Element ? node : node?.parentElement;
          const what = element?.outerHTML.slice(0, 100) ?? "gone";
          return `${what} from [${from}] to [${to}]`;
        });
        found.push(`${entry.value.toFixed(4)}: ${moved.join(" | ")}`);
      }
    }).observe({ type: "layout-shift", buffered: true });
  });
}

/** Shifts since the document was loaded, each with its score and what moved. */
export const shiftsOf = (page: Page): Promise<string[]> => page.evaluate(() => window.layoutShifts ?? []);

/** Those since the last call. */
export const takeShifts = (page: Page): Promise<string[]> =>
  page.evaluate(() => window.layoutShifts?.splice(0) ?? []);
