/** The thumb that walks: one act a step, a rest after it, and its measure taken. */
import type { Locator, Page } from "playwright-core";

/** Long enough for what a tap set going. */
const SETTLE_MS = 700;

export interface Thumb {
  readonly page: Page;
  /** Does one thing, waits until the page has come to rest, and has it measured under this name. */
  step(name: string, act: () => Promise<unknown>): Promise<void>;
  /** Taps the button of this name. */
  tap(name: string): Promise<void>;
  /** Opens a page by its link or button, and comes back. */
  visit(name: string): Promise<void>;
  /** Opens a page by its link or button; a second visit has a name of its own. */
  open(name: string, as?: string): Promise<void>;
  back(from: string): Promise<void>;
  toPlace(name: string, as?: string): Promise<void>;
}

export const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: true });

/** @param measured - called after each step with its name, when the page has come to rest */
export function createThumb(page: Page, measured: (step: string) => Promise<void>): Thumb {
  const step = async (name: string, act: () => Promise<unknown>) => {
    await act();
    await page.waitForTimeout(SETTLE_MS);
    await measured(name);
  };
  const link = (name: string) =>
    page.locator("main").getByRole("link", { name }).or(page.getByRole("button", { name })).first();
  const open = (name: string, as = name) => step(as, () => link(name).tap());
  const back = (from: string) => step(`back from ${from}`, () => page.locator("main .back").tap());
  return {
    page,
    step,
    tap: (name) => step(name, () => button(page, name).first().tap()),
    open,
    back,
    async visit(name) {
      await open(name);
      await back(name);
    },
    toPlace: (name, as = `place ${name}`) =>
      step(as, () => page.locator("nav.places").getByRole("link", { name }).tap()),
  };
}
