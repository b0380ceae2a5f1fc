/** Phones at You, and what a person does there. No page of a test may ask another origin for anything. */
import type { BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { afterEach, expect, inject } from "vitest";
import { introduced } from "./introduced.js";
import { rowsOf } from "./mealsTable.js";
import { usePhones } from "./usePhones.js";

const PATIENCE_MS = 60_000;

export interface YouPhones {
  freshPhone(options?: BrowserContextOptions): Promise<BrowserContext>;
  /** Every address that any page or service worker of the running test has asked for. */
  readonly asked: readonly string[];
}

/** A browser for the tests of one file; what was asked is held against the origin after each test. */
export function useYouPhones(): YouPhones {
  const asked: string[] = [];
  // Hooks after a test run last in, first out: the phones are closed before what they asked is held against the origin.
  afterEach(() => {
    const origin = new URL(inject("appUrl")).origin;
    const outside = asked
      .splice(0)
      .filter((url) => !/^(blob|data):/.test(url) && new URL(url).origin !== origin);
    expect(outside).toEqual([]);
  });
  const phone = usePhones();
  return {
    asked,
    async freshPhone(options = {}) {
      const context = await phone({ acceptDownloads: true, ...options });
      await introduced(context);
      context.on("request", (request) => asked.push(request.url()));
      return context;
    },
  };
}

export async function open(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(`${inject("appUrl")}${address}`);
  return page;
}

export const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
export const heading = (page: Page, name: string) => page.getByRole("heading", { name, exact: true });
export const visit = (page: Page, address: string) => page.goto(`${inject("appUrl")}${address}`);
/** The settings as they are kept, once they say so: a touch is kept at once, but not in no time. */
export const kept = (page: Page) =>
  expect.poll(() => rowsOf<Record<string, unknown>>(page, "settings"), { timeout: PATIENCE_MS });

export async function addAllergy(page: Page, id: string, severity: string): Promise<void> {
  await visit(page, "#/you/allergies");
  await button(page, "Add an allergy").click();
  await page.getByLabel("Allergic to").selectOption(id);
  await page.getByRole("radio", { name: severity, exact: true }).check();
  await button(page, "Save").click();
  await page.locator(".allergy").first().waitFor();
}
