/** The page's time in the test's hand: it runs only when the test makes it run. */
import type { Locator, Page } from "playwright-core";

/** How long real work may take: a piece of the app that is fetched, a row that is written. */
const PATIENCE_MS = 60_000;
/** More of the page's time than any step of a check takes; a second of the practice sniffer is an eighth of it. */
const LONGEST_MS = 50_000;
/** The practice sniffer's chance comes from the moment it is taken in hand: from the same one it is the same each time. */
const OPENED_AT = new Date("2026-11-27T12:00:00Z");
const STILL_FROM = new Date("2026-11-27T18:00:00Z");
const STEP_MS = 500;
/** So short that the sniffer does hardly anything meanwhile, and the page draws what it has. */
export const MOMENT_MS = 10;

/** Before the page is opened: its time is the test's, and runs as on the wall until `holdTime`. */
export const takeTime = (page: Page): Promise<void> => page.clock.install({ time: OPENED_AT });

/** From here on nothing but the test makes time run, so that a slow machine is no slow hand. */
export const holdTime = (page: Page): Promise<void> => page.clock.pauseAt(STILL_FROM);

/** Makes the page's time run by steps until something holds; real work, which no step hurries, may take its own time. */
export async function stepUntil(
  page: Page,
  stepMs: number,
  holds: () => Promise<boolean>,
  what: string,
): Promise<void> {
  const begunMs = Date.now();
  for (let ranMs = 0; !(await holds()); ranMs += stepMs) {
    if (ranMs > LONGEST_MS && Date.now() - begunMs > PATIENCE_MS)
      throw new Error(`it did not come: ${what}\n${await page.locator("main").innerText()}`);
    await page.clock.runFor(stepMs);
  }
}

/** Makes time run until something shows that the sniffer's time brings; a button, until it can be tapped. */
export const runUntil = (page: Page, wanted: Locator): Promise<void> =>
  stepUntil(page, STEP_MS, () => isReady(wanted), String(wanted));

/** Waits for something that the page itself brings. */
export const arrive = (page: Page, wanted: Locator): Promise<void> =>
  stepUntil(page, MOMENT_MS, () => isReady(wanted), String(wanted));

/** Waits until something is there no more. */
export const leave = (page: Page, unwanted: Locator): Promise<void> =>
  stepUntil(page, MOMENT_MS, async () => (await unwanted.count()) === 0, `the end of ${String(unwanted)}`);

const isReady = async (wanted: Locator): Promise<boolean> =>
  (await wanted.first().isVisible()) && (await wanted.first().isEnabled());
