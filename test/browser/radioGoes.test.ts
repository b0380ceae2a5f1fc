// Nothing on Plate moves by itself when the radio goes or comes.
import type { Page } from "playwright-core";
import { expect, inject, it } from "vitest";
import { introduced } from "./introduced.js";
import { recordShifts, shiftsOf } from "./layoutShifts.js";
import { usePhones } from "./usePhones.js";

const newContext = usePhones();

async function openPhone(): Promise<Page> {
  const context = await newContext({ hasTouch: true, isMobile: true });
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
