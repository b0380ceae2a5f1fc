/** What is wrong with one page of the gallery: axe's word, its width, targets too small for a thumb. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

export interface GalleryPage {
  readonly url: string;
  readonly name: string;
  readonly language: "en" | "de";
  /** Twice the browser's text size, as a person with weak eyes sets it. */
  readonly large: boolean;
}

/** Names of all pages of the gallery. */
export async function galleryNames(page: Page, url: string): Promise<string[]> {
  await page.goto(url);
  return page.locator("li a").allTextContents();
}

/** Opens a page of the gallery, grows the window to all of it, and looks. Each fault is one line. */
export async function faultsOf(page: Page, { url, name, language, large }: GalleryPage): Promise<string[]> {
  await page.goto(`${url}/?screen=${name}&language=${language}`);
  if (large) await page.evaluate(() => (document.documentElement.style.fontSize = "200%"));
  await page.waitForTimeout(150);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  const faults = overflow > 0 ? [`wider than the screen by ${overflow} px`] : [];
  faults.push(...(await smallTargets(page)));
  if (!large) faults.push(...(await cutTables(page)));
  await growToPage(page);
  return [...faults, ...(await runAxe(page))];
}

/** A column cut at the edge can pass for a shorter number. Text twice as large may need to be moved sideways. */
function cutTables(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll(".table")]
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth)
      .map(
        ({ ariaLabel, scrollWidth, clientWidth }) =>
          `table "${ariaLabel ?? ""}" cut by ${scrollWidth - clientWidth} px`,
      ),
  );
}

/**
 * The window grows to the whole page, so that the bar at the bottom covers nothing. What is laid out only when it is
 * seen, and what is as high as a share of the window, make the page grow with it, the former a moment later: so it is
 * asked until it has told the same twice.
 */
async function growToPage(page: Page): Promise<void> {
  const { width, height: first } = page.viewportSize() ?? { width: 390, height: 844 };
  for (let tries = 0, height = first, unchanged = 0; tries < 8 && unchanged < 2; tries++) {
    const whole = await page.evaluate(async () => {
      for (const _ of [1, 2]) await new Promise(requestAnimationFrame); // until it is laid out anew
      return document.documentElement.scrollHeight;
    });
    unchanged = whole <= height ? unchanged + 1 : 0;
    if (unchanged > 0) continue;
    height = whole;
    await page.setViewportSize({ width, height });
  }
}

/** What is tapped must be at least 44 px high and wide, but for links within text. */
function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll("button, select, input, summary, nav a, textarea")]
      .map((element) => ({ element, box: (element.closest("label") ?? element).getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0 && (box.height < 44 || box.width < 44))
      .map(({ element, box }) => `small target ${element.outerHTML.slice(0, 80)} ${box.width}x${box.height}`),
  );
}

interface AxeWindow {
  axe: {
    run: (options: object) => Promise<{
      violations: { id: string; help: string; nodes: { html: string; failureSummary?: string }[] }[];
    }>;
  };
}

async function runAxe(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const found = await page.evaluate(() =>
    (window as unknown as AxeWindow).axe.run({
      runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    }),
  );
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(
      ({ html, failureSummary = "" }) => `${id}: ${html.slice(0, 120)} ${failureSummary.slice(0, 160)}`,
    ),
  );
}
