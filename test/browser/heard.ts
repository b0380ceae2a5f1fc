/** What a screen reader is given to say by itself: the words of every live region, as they change. */
import type { BrowserContext, Page } from "playwright-core";

export interface Heard {
  readonly words: string;
  /** Said by the region that stands beside the pages, or by one on a page. */
  readonly by: "announcer" | "page";
}

/** Writes every change of a live region's words down, and a region that came with words, from the first page on. */
export async function listenTo(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const heard: Heard[] = [];
    Object.assign(globalThis, { heard });
    const said = new WeakMap<Element, string>();
    const LIVE = "[role=status], [role=alert], [role=log], [aria-live]";
    const listen = () => {
      for (const region of document.querySelectorAll(LIVE)) {
        const words = region.textContent.trim();
        if (said.get(region) === words) continue;
        said.set(region, words);
        const by = region.closest("main, footer, header") === null ? "announcer" : "page";
        if (words !== "") heard.push({ words, by });
      }
    };
    new MutationObserver(listen).observe(document, { childList: true, subtree: true, characterData: true });
  });
}

/** All that was said, in order. */
export function allHeard(page: Page): Promise<Heard[]> {
  return page.evaluate(() => (globalThis as unknown as { heard: Heard[] }).heard);
}

/** How often a line was said that begins so: a finding says its groups after its first words. */
export async function timesHeard(page: Page, beginning: string): Promise<number> {
  return (await allHeard(page)).filter(({ words }) => words.startsWith(beginning)).length;
}
