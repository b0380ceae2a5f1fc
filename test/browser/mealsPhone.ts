/** A phone at Meals, and what a person does there. */
import type { BrowserContext, Page } from "playwright-core";
import { inject } from "vitest";
import { manyMeals } from "../meals/manyMeals.js";
import { introduced } from "./introduced.js";
import { putMeals } from "./mealsTable.js";
import { usePhones } from "./usePhones.js";

const PATIENCE_MS = 60_000;

/** Opens Meals on a fresh phone for each call. */
export function useMealsPhones(): (address?: string) => Promise<Page> {
  const newContext = usePhones();
  return async (address) => {
    const context = await newContext({ timezoneId: "Europe/Berlin", acceptDownloads: true });
    await introduced(context);
    return openMealsIn(context, address);
  };
}

/** One more page on a phone. */
export async function openMealsIn(context: BrowserContext, address = "#/meals"): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(`${inject("appUrl")}${address}`);
  return page;
}

export const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
export const heading = (page: Page, name: string | RegExp) =>
  page.getByRole("heading", { name, exact: true });
export const row = (page: Page, dish: string) => page.getByRole("link", { name: dish });
/** One of a few, or several of a few. */
export const choose = (page: Page, group: string, option: string) =>
  page.getByRole("group", { name: group }).getByLabel(option, { exact: true }).check();

export interface Entry {
  readonly dish: string;
  readonly place?: string;
  readonly when?: string;
}

export async function fill(page: Page, { dish, place = "", when }: Entry): Promise<void> {
  await page.getByLabel("Dish", { exact: true }).fill(dish);
  await page.getByLabel("Place", { exact: true }).fill(place);
  if (when !== undefined) await page.getByLabel("When", { exact: true }).fill(when);
}

/** Logs a meal by hand and ends on its page. */
export async function log(page: Page, entry: Entry): Promise<void> {
  await button(page, "Add a meal").click();
  await fill(page, entry);
  await button(page, "Save the meal").click();
  await heading(page, entry.dish).waitFor();
}

export const toList = (page: Page) => button(page, "All meals").click();

/** Puts so many meals on a phone that stands at Plate. */
export async function fillWith(page: Page, count: number): Promise<void> {
  await page.getByRole("link", { name: "Meals" }).waitFor();
  await putMeals(page, manyMeals(count));
  await page.reload();
  await button(page, "Use the virtual sniffer").waitFor();
  await page.waitForTimeout(1000); // the nose is read by then
}
