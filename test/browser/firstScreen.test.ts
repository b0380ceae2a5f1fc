// The first screen: what it needs, and that nothing on it moves when the rest arrives.
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import type { BrowserContext, Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { introduced } from "./introduced.js";
import { recordShifts, shiftsOf } from "./layoutShifts.js";
import { usePhones } from "./usePhones.js";

const SITE = fileURLToPath(new URL("../output/site/", import.meta.url));

const newContext = usePhones();
let context: BrowserContext;

async function newPhone(locale = "en-GB"): Promise<Page> {
  context = await newContext({ locale, serviceWorkers: "block" });
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  return page;
}

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole("heading", { name, exact: true });

/** The pieces that the page itself names: the size check holds these to their ceiling. */
async function namedScripts(): Promise<string[]> {
  const html = await readFile(`${SITE}index.html`, "utf8");
  return [...html.matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(([, path = ""]) => path);
}

/** Lets through what the page names; all other scripts wait until the answer is called. */
async function holdBackTheRest(also: RegExp): Promise<{ release: () => void; held: string[] }> {
  const named = await namedScripts();
  const held: string[] = [];
  let release: () => void = () => undefined;
  const released = new Promise<void>((resolve) => {
    release = resolve;
  });
  await context.route(/\.js$/, async (route) => {
    const url = route.request().url();
    if (!named.some((path) => url.endsWith(path)) && !also.test(url)) {
      held.push(url);
      await released;
    }
    await route.continue();
  });
  return { release, held };
}

const NOTHING_ELSE = /^$/;

describe("the first screen", () => {
  it("stands for a newcomer with nothing but the scripts that the page names", async () => {
    const page = await newPhone();
    const { held } = await holdBackTheRest(NOTHING_ELSE);
    await page.goto(inject("appUrl"));
    await heading(page, "Smell what is on a plate somebody else cooked").waitFor();
    await button(page, "Next").click();
    await heading(page, "What it cannot do").waitFor();
    // The store and the other words were asked for, and not waited for.
    expect(held.some((url) => /dexieStore/.test(url))).toBe(true);
  });

  it("takes a dish before anything else is there, says nothing of it yet, and warns as soon as it can", async () => {
    const page = await newPhone();
    await introduced(context);
    const { release } = await holdBackTheRest(NOTHING_ELSE);
    await page.goto(inject("appUrl"));
    await page.getByLabel("Dish", { exact: true }).fill("tonkotsu ramen");
    await page.getByText("One moment").waitFor();
    expect(await page.getByText("Our tables name no caution for these words").count()).toBe(0);
    expect(await button(page, "Check this plate").getAttribute("aria-disabled")).toBe("true");
    release();
    await page.getByText("Say under You what you avoid").waitFor();
  });

  it("opens no other place before what is kept is read, and then opens it", async () => {
    const page = await newPhone();
    await introduced(context);
    const { release } = await holdBackTheRest(/MealsPlace|YouPlace/);
    await page.goto(`${inject("appUrl")}#/you/allergies`);
    await page.getByRole("link", { name: "Meals" }).waitFor();
    expect(await page.locator("main").textContent()).toBe("");
    release();
    await heading(page, "Allergies").waitFor();
  });

  it("speaks German from its first word, with no English before", async () => {
    const page = await newPhone("de-DE");
    await introduced(context);
    await holdBackTheRest(/first-.*\.js$/);
    await page.goto(inject("appUrl"));
    await heading(page, "Was ist auf dem Teller?").waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe("de");
  });
});

describe("when the rest arrives", () => {
  it.each(["en-GB", "de-DE"])(
    "nothing moves, for a newcomer and for who comes back, in %s",
    async (locale) => {
      const page = await newPhone(locale);
      await recordShifts(page);
      await page.goto(inject("appUrl"));
      await page.waitForTimeout(2500);
      expect(await shiftsOf(page)).toEqual([]);
      // The browser of this test has no radio; the strip says so from the second start on, as it looked last.
      await page.evaluate(() => localStorage.setItem("nidor-first-run", "done"));
      await page.reload();
      await page.waitForTimeout(2500);
      await page.reload();
      await page.waitForTimeout(2500);
      await page.locator("#dish").waitFor();
      expect(await shiftsOf(page)).toEqual([]);
    },
  );

  it("a dark German screen comes back dark and German at once, with no browser asking for either", async () => {
    const page = await newPhone("en-GB");
    await introduced(context);
    await page.goto(`${inject("appUrl")}#/you/settings`);
    await page.getByLabel("dark", { exact: true }).check();
    await page.getByLabel("Deutsch", { exact: true }).check();
    await page.locator("html[lang=de][data-theme=dark]").waitFor();
    await page.waitForTimeout(500);
    await holdBackTheRest(/first-.*\.js$/);
    await page.goto(`${inject("appUrl")}?again#/plate`);
    await heading(page, "Was ist auf dem Teller?").waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset["theme"])).toBe("dark");
  });
});
