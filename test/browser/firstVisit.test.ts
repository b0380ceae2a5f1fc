// The very first visit, and its network: it may go before all of the app is on the phone, carry nothing though it is said
// to be there, and come back. Nothing breaks, the person is told, and what was missing comes by itself.
import type { BrowserContext, Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { introduced } from "./introduced.js";
import { usePhones } from "./usePhones.js";

const MISSING = "A part of the app is still missing. It comes by itself with the network";
const KEPT = "No network. Everything here works without it.";

const newPhone = usePhones();

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole("heading", { name, exact: true });
const broken = (page: Page) => page.locator(".details-text");

async function firstVisit(phone: BrowserContext, place: string): Promise<Page> {
  await introduced(phone);
  const page = await phone.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(`${inject("appUrl")}#/${place}`);
  return page;
}

/** Cuts off all scripts that the given words name, as a network does that carries nothing. */
async function cutOff(phone: BrowserContext, scripts: RegExp): Promise<() => Promise<void>> {
  await phone.route(scripts, (route) => route.abort("connectionfailed"));
  return () => phone.unroute(scripts);
}

describe("before all is on the phone", () => {
  it.each(["dietTables", "judging", "dexieStore", "reading", "reachRest", "snifferLine", "later"])(
    "Plate stands and takes a dish without %s, and goes on by itself when the network is back",
    async (piece) => {
      const phone = await newPhone({ serviceWorkers: "block" });
      const giveBack = await cutOff(phone, new RegExp(`/${piece}-.*\\.js$`));
      const page = await firstVisit(phone, "plate");
      await page.getByText(MISSING).waitFor();
      await page.getByLabel("Dish", { exact: true }).fill("tonkotsu ramen");
      expect(await broken(page).count()).toBe(0);
      await giveBack();
      await page.evaluate(() => dispatchEvent(new Event("online")));
      await page.getByText(MISSING).waitFor({ state: "detached" });
      await page.getByText("Say under You what you avoid").waitFor();
      expect(await page.getByLabel("Dish", { exact: true }).inputValue()).toBe("tonkotsu ramen");
      await button(page, "Use the virtual sniffer").click();
      await page.locator('.actions [aria-disabled="true"]').waitFor({ state: "detached" });
      await button(page, "Check this plate").click();
      await page.locator("[data-phase]").waitFor();
    },
  );

  it("a place that is not here yet opens as soon as the network is back, with no word from the browser", async () => {
    const phone = await newPhone({ serviceWorkers: "block" });
    const giveBack = await cutOff(phone, /MealsPlace-.*\.js$/);
    const page = await firstVisit(phone, "meals");
    await page.getByText(MISSING).waitFor();
    expect(await broken(page).count()).toBe(0);
    await page.getByRole("link", { name: "You" }).click();
    await heading(page, "You").waitFor();
    await page.getByRole("link", { name: "Meals" }).click();
    await giveBack();
    await heading(page, "Meals").waitFor();
    await page.getByText(MISSING).waitFor({ state: "detached" });
  });

  it("speaks German all the same, once its words are here", async () => {
    const phone = await newPhone({ serviceWorkers: "block", locale: "de-DE" });
    const giveBack = await cutOff(phone, /later-.*\.js$/);
    const page = await firstVisit(phone, "you");
    await page.getByText("Ein Teil der App fehlt noch").waitFor();
    await giveBack();
    await heading(page, "Du").waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe("de");
  });

  it("a network that goes in the middle of it breaks nothing", async () => {
    for (const afterMs of [0, 50, 100, 200, 400, 800]) {
      const phone = await newPhone();
      const page = await firstVisit(phone, "plate");
      await heading(page, "What is on the plate?").waitFor();
      await page.waitForTimeout(afterMs);
      await phone.setOffline(true);
      await page.getByText(MISSING).or(page.getByText(KEPT)).waitFor();
      await page.waitForTimeout(1000);
      expect(await broken(page).count()).toBe(0);
      await phone.setOffline(false);
      await page.locator(".bar").waitFor({ state: "detached" });
      await page.getByLabel("Dish", { exact: true }).fill("tonkotsu ramen");
      await page.getByText("Say under You what you avoid").waitFor();
    }
  });
});

describe("once all is on the phone", () => {
  it("every place opens without a network in that very visit", async () => {
    const phone = await newPhone();
    const page = await firstVisit(phone, "plate");
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
    await phone.setOffline(true);
    await page.getByText(KEPT).waitFor();
    for (const place of ["Meals", "Nose", "You"]) {
      await page.getByRole("link", { name: place }).click();
      await heading(page, place).waitFor();
    }
    expect(await page.getByText(MISSING).count()).toBe(0);
  });
});

const SILENT = "The storage of this phone does not answer.";

describe("a storage that does not answer", () => {
  it("is not told of while only the piece that opens it is missing", async () => {
    const phone = await newPhone({ serviceWorkers: "block" });
    await cutOff(phone, /dexieStore-.*\.js$/);
    const page = await firstVisit(phone, "plate");
    await page.getByText(MISSING).waitFor();
    await page.waitForTimeout(9000);
    expect(await page.getByText(SILENT).count()).toBe(0);
  });

  it("is told of, with what to do, and no more once it answers", async () => {
    const phone = await newPhone({ serviceWorkers: "block" });
    await phone.addInitScript(() => {
      const open = indexedDB.open.bind(indexedDB);
      IDBFactory.prototype.open = (name, version) => {
        const request = open(name, version);
        const hold = (handler: (event: Event) => void) =>
          addEventListener("answer", () => handler.call(request, new Event("success")), { once: true });
        Object.defineProperty(request, "onsuccess", { set: hold });
        return request;
      };
    });
    const page = await firstVisit(phone, "meals");
    const told = page.getByText(SILENT);
    await told.waitFor();
    expect(await broken(page).count()).toBe(0);
    await page.evaluate(() => dispatchEvent(new Event("answer")));
    await heading(page, "Meals").waitFor();
    expect(await told.count()).toBe(0);
  });
});
