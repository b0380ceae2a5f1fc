// Nothing on Plate moves by itself when the radio goes or comes.
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject, it } from "vitest";
import { launchChromium } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";
import { recordShifts, shiftsOf } from "./layoutShifts.js";

const PHONE = { width: 390, height: 844 };

let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(() => context.close());

async function openPhone(): Promise<Page> {
  context = await browser.newContext({ viewport: PHONE, locale: "en-GB", hasTouch: true, isMobile: true });
  await introduced(context);
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await recordShifts(page);
  await page.goto(inject("appUrl"));
  return page;
}

it("does not move when the radio goes off and comes on again", async () => {
  const page = await openPhone();
  await page.getByLabel("Dish", { exact: true }).waitFor();
  const strip = page.locator(".sniffer__text");
  const radio = async (isOn: boolean, told: RegExp) => {
    await page.evaluate((value) => {
      navigator.bluetooth.getAvailability = () => Promise.resolve(value);
      navigator.bluetooth.dispatchEvent(new Event("availabilitychanged"));
    }, isOn);
    await strip.getByText(told).waitFor();
    await page.waitForTimeout(300);
  };
  await page.waitForTimeout(1000);
  await radio(true, /^Pair yours/);
  await radio(false, /Bluetooth is off/);
  await radio(true, /^Pair yours/);
  expect(await shiftsOf(page)).toEqual([]);
});

it("hears of what does move, without a touch", async () => {
  const page = await openPhone();
  await page.getByLabel("Dish", { exact: true }).waitFor();
  await page.waitForTimeout(1000);
  await page.evaluate(() => {
    const late = document.createElement("p");
    late.textContent = "late";
    document.querySelector("main")?.prepend(late);
  });
  await expect.poll(async () => (await shiftsOf(page)).length).toBeGreaterThan(0);
});
