import type { Browser, BrowserContext, BrowserContextOptions } from "playwright-core";
import { afterAll, afterEach, beforeAll } from "vitest";
import { launchChromium } from "./emulatedPeripheral.js";

/** A common size of phone, in CSS pixels. */
export const PHONE = { width: 390, height: 844 };

/**
 * A browser for the tests of one file.
 *
 * @returns opens a fresh phone in it, English unless told otherwise; it is closed after its test
 */
export function usePhones(): (options?: BrowserContextOptions) => Promise<BrowserContext> {
  let browser: Browser;
  const phones: BrowserContext[] = [];
  beforeAll(async () => {
    browser = await launchChromium();
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    await Promise.all(phones.splice(0).map((phone) => phone.close()));
  });
  return async (options) => {
    const phone = await browser.newContext({ viewport: PHONE, locale: "en-GB", ...options });
    phones.push(phone);
    return phone;
  };
}
