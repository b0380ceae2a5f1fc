// Nothing on the page moves by itself, from the first visit through the whole job to the last page, nor when what is
// told by itself comes and goes. @see W3C Web Incubator CG, Layout Instability API
import type { Page } from "playwright-core";
import { expect, inject, it } from "vitest";
import { stepShifts } from "../bench/walk/stepShifts.js";
import { walkThroughTheApp } from "../bench/walk/walkThroughTheApp.js";
import { manyMeals } from "../meals/manyMeals.js";
import { introduced } from "./introduced.js";
import { recordShifts, shiftsOf } from "./layoutShifts.js";
import { putMeals } from "./mealsTable.js";
import { usePhones } from "./usePhones.js";

const newPhone = usePhones();

it("nothing moves by itself on the walk of the whole job, on a slow phone", async () => {
  const phone = await newPhone({ hasTouch: true, isMobile: true });
  const page = await phone.newPage();
  page.setDefaultTimeout(60_000);
  await recordShifts(page);
  await page.goto(inject("appUrl"));
  await page.getByText("1 of 4").waitFor();
  await putMeals(page, manyMeals(200));
  await page.reload();
  await page.waitForTimeout(2000);
  const session = await phone.newCDPSession(page);
  // What is drawn late is drawn after the half second in which a tap excuses every move.
  await session.send("Emulation.setCPUThrottlingRate", { rate: 4 });
  const moved: string[] = [];
  let steps = 0;
  await walkThroughTheApp(page, async (step) => {
    steps += 1;
    moved.push(...(await stepShifts(page, step)));
  });
  expect(moved).toEqual([]);
  expect(steps).toBeGreaterThan(90);
});

const PLACES = ["plate", "meals", "nose", "you"];
const PAGES = [
  ...PLACES,
  ...["new", "review"].map((page) => `meals/${page}`),
  ...["samples", "teach", "versions", "fitness", "live", "sniffers", "transfer", "report"].map(
    (page) => `nose/${page}`,
  ),
  ...["diet", "allergies", "intolerances", "missRate", "settings", "card", "data", "install"].map(
    (page) => `you/${page}`,
  ),
  ...["about", "glossary"].map((page) => `you/${page}`),
];

/** Waits for something on the page. Where it does not come, what stands there instead is told: that says what is missing. */
async function orTell(page: Page, place: string, wait: () => Promise<void>): Promise<void> {
  try {
    await wait();
  } catch (cause) {
    const databases = await page.evaluate(() => indexedDB.databases());
    const shown = await page.locator("body").textContent();
    throw new Error(`${place} shows "${shown}", databases ${JSON.stringify(databases)}`, { cause });
  }
}

it.each(["en-GB", "de-DE"])(
  "no page moves when it is opened by its address or loaded anew, in %s",
  async (locale) => {
    const phone = await newPhone({ locale, hasTouch: true, isMobile: true });
    await introduced(phone);
    const moved: string[] = [];
    for (const address of PAGES) {
      const page = await phone.newPage();
      await recordShifts(page);
      await page.goto(`${inject("appUrl")}#/${address}`);
      await orTell(page, address, () => page.locator("main h1").waitFor());
      await page.waitForTimeout(800);
      moved.push(...(await shiftsOf(page)).map((shift) => `${address}: ${shift}`));
      await page.close();
    }
    expect(moved).toEqual([]);
  },
);

it.each(PLACES)("what tells of the network comes and goes over %s and moves nothing", async (place) => {
  const phone = await newPhone({ hasTouch: true, isMobile: true });
  await introduced(phone);
  const page = await phone.newPage();
  await recordShifts(page);
  await page.goto(`${inject("appUrl")}#/${place}`);
  await orTell(page, place, () => page.locator("main h1").waitFor());
  // Before all is kept a phone without a network lacks pieces of the app: that is not what is looked at here.
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  await page.waitForTimeout(1000);
  await phone.setOffline(true);
  await orTell(page, `${place}, offline`, () => page.locator(".bar").waitFor());
  await page.waitForTimeout(500);
  await phone.setOffline(false);
  await orTell(page, `${place}, online`, () => page.locator(".bar").waitFor({ state: "detached" }));
  await page.waitForTimeout(500);
  expect(await shiftsOf(page)).toEqual([]);
});
