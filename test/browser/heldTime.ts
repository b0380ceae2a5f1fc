/** The page's time in the test's hand: it runs only when the test makes it run. */
import type { Locator, Page } from "playwright-core";

const STEP_MS = 500;
const MOST_STEPS = 100;

/** Makes the page's time run until something shows. */
export async function runUntil(page: Page, wanted: Locator): Promise<void> {
  for (let tries = 0; !(await wanted.first().isVisible()); tries += 1) {
    if (tries > MOST_STEPS) throw new Error(`it did not come: ${wanted}`);
    await page.clock.runFor(STEP_MS);
  }
}
