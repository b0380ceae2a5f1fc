import type { BrowserContext } from "playwright-core";

/** A phone whose owner has been through the first run. */
export async function introduced(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => localStorage.setItem("nidor-first-run", "done"));
}
