/** The thumb that walks: one act a step, a rest after it, and its measure taken. */
import type { Locator, Page } from "playwright-core";

/** Long enough for what a tap set going. */
const SETTLE_MS = 700;
/** Long enough for what finding a control set going. */
const AIM_MS = 150;
/** From one letter to the next. */
const KEY_MS = 150;

export interface Thumb {
  readonly page: Page;
  /** Does one thing, waits until the page has come to rest, and has it measured under this name. */
  step(name: string, act: () => Promise<unknown>): Promise<void>;
  /** Taps a control. */
  touch(name: string, control: Locator): Promise<void>;
  /** Taps the button of this name. */
  tap(name: string): Promise<void>;
  /** Goes to a field and types into it. */
  type(name: string, field: Locator, text: string): Promise<void>;
  /** Goes to a field and presses keys. */
  press(name: string, field: Locator, ...keys: readonly string[]): Promise<void>;
  /** Opens a page by its link or button, and comes back. */
  visit(name: string): Promise<void>;
  /** Opens a page by its link or button; a second visit has a name of its own. */
  open(name: string, as?: string): Promise<void>;
  back(from: string): Promise<void>;
  toPlace(name: string, as?: string): Promise<void>;
}

export const button = (page: Page, name: string | RegExp): Locator =>
  page.getByRole("button", { name, exact: true });

/**
 * Touches bare glass, for a tap of Playwright's own looks into the page at each of its events: a third of what a tap
 * took on a slowed processor.
 *
 * @throws {Error} if something else lies over the control
 */
async function touchBare(page: Page, control: Locator): Promise<void> {
  const element = await control.elementHandle();
  for (const state of ["stable", "enabled"] as const) await element?.waitForElementState(state);
  const isBare = await control.evaluate((one) => {
    for (const block of ["nearest", "center"] as const) {
      one.scrollIntoView({ block });
      const { x, y, width, height } = one.getBoundingClientRect();
      const top = document.elementFromPoint(x + width / 2, y + height / 2);
      if (one.contains(top) || top?.closest("label")?.control === one) return true;
    }
    return false;
  });
  const box = await control.boundingBox();
  if (!isBare || box === null) throw new Error(`something lies over ${String(control)}`);
  await page.waitForTimeout(AIM_MS);
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
}

/** @param measured - called after each step with its name, when the page has come to rest */
export function createThumb(page: Page, measured: (step: string) => Promise<void>): Thumb {
  const step = async (name: string, act: () => Promise<unknown>) => {
    await act();
    await page.waitForTimeout(SETTLE_MS);
    await measured(name);
  };
  const keys = (name: string, field: Locator, each: readonly string[]) =>
    step(name, async () => {
      await field.focus();
      for (const key of each) {
        await page.waitForTimeout(KEY_MS);
        await page.keyboard.press(key);
      }
    });
  const touch = (name: string, control: Locator) => step(name, () => touchBare(page, control));
  const link = (name: string) =>
    page.locator("main").getByRole("link", { name }).or(page.getByRole("button", { name })).first();
  const open = (name: string, as = name) => touch(as, link(name));
  const back = (from: string) => touch(`back from ${from}`, page.locator("main .back"));
  return {
    page,
    step,
    touch,
    tap: (name) => touch(name, button(page, name).first()),
    type: (name, field, text) => keys(name, field, [...text]),
    press: (name, field, ...pressed) => keys(name, field, pressed),
    open,
    back,
    async visit(name) {
      await open(name);
      await back(name);
    },
    toPlace: (name, as = `place ${name}`) =>
      touch(as, page.locator("nav.places").getByRole("link", { name })),
  };
}
