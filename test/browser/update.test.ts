// A newer app: a second build is put on the host while the first one runs. It is offered and never forced, least of all
// in the middle of a sniff, and taking it loses nothing. @see W3C, Service Workers, 2.2.2 (waiting worker)
import { cp, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from "vitest";
import { launchChromium } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";
import { rowsOf } from "./mealsTable.js";
import { serveUnder, type StaticHost } from "./serveUnder.js";

const PHONE = { width: 390, height: 844 };
const SITE = fileURLToPath(new URL("../output/site", import.meta.url));

let browser: Browser;
let context: BrowserContext;
let folder: string;
let host: StaticHost;

beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), "nidor-update-"));
  await cp(SITE, folder, { recursive: true });
  host = await serveUnder("/", folder);
  context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
  await introduced(context);
});
afterEach(async () => {
  await context.close();
  await host.close();
  await rm(folder, { recursive: true });
});

/** The app under its service worker, as from the second visit on. */
async function openApp(): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(60_000);
  await page.goto(host.url);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.reload();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await page.locator("#dish").waitFor();
  await page.evaluate(() => Object.assign(globalThis, { isSameDocument: true }));
  return page;
}

/** Another build on the host: the page says which it is, and the service worker knows of the other page. */
async function releaseSecondVersion(): Promise<void> {
  const page = join(folder, "index.html");
  const worker = join(folder, "sw.js");
  const html = await readFile(page, "utf8");
  await writeFile(page, html.replace("</title>", `</title><meta name="version" content="second" />`));
  const script = await readFile(worker, "utf8");
  const changed = script.replace(/(url:"index\.html",revision:")[0-9a-f]+/, "$1second");
  expect(changed).not.toBe(script);
  await writeFile(worker, changed);
}

/** What the browser does by itself at a visit: looks for another worker and installs it beside the first. */
const lookForUpdate = (page: Page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update();
    while (registration.waiting === null) await new Promise((later) => setTimeout(later, 50));
  });

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const offer = (page: Page) => page.getByText("A newer version is ready");
const versionOf = (page: Page) => page.locator("meta[name=version]").count();
const isSameDocument = (page: Page) => page.evaluate(() => "isSameDocument" in globalThis);
const phase = (page: Page, name: string) => page.locator(`[data-phase="${name}"]`);

async function sniffUntilOverPlate(page: Page, dish: string): Promise<void> {
  await page.locator("#dish").fill(dish);
  await button(page, "Use the virtual sniffer").click();
  await page.locator('.actions [aria-disabled="true"]').waitFor({ state: "detached" });
  await button(page, "Check this plate").click();
  await phase(page, "overPlate").waitFor();
}

it("is offered only after a sniff is done with, and taking it loses neither sniff, meal nor words", async () => {
  const page = await openApp();
  await sniffUntilOverPlate(page, "plum soup");
  await releaseSecondVersion();
  await lookForUpdate(page);
  expect(await phase(page, "overPlate").count()).toBe(1);
  expect(await offer(page).count()).toBe(0);
  await button(page, "Start the countdown").click();
  await phase(page, "headspace").waitFor();
  expect(await offer(page).count()).toBe(0);
  await button(page, "Save as a meal").waitFor();
  // The finding stands on this page alone: no offer that would take it away.
  expect(await offer(page).count()).toBe(0);
  await button(page, "Save as a meal").click();
  await page.getByLabel("Note", { exact: true }).fill("they said vegetables only");
  expect(await offer(page).count()).toBe(0);
  await button(page, "Save the meal").click();
  await button(page, "All meals").click();
  await page.getByRole("link", { name: "Plate" }).click();
  await button(page, "Done").or(page.locator("#dish")).first().waitFor();
  if ((await button(page, "Done").count()) > 0) await button(page, "Done").click();
  await offer(page).waitFor();
  expect([await isSameDocument(page), await versionOf(page)]).toEqual([true, 0]);

  await button(page, "Use it now").click();
  await page.locator("meta[name=version]").waitFor({ state: "attached" });
  await page.locator("#dish").waitFor();
  expect(await offer(page).count()).toBe(0);
  const [meal] = await rowsOf<{ dish: string; note: string; sniffId: string }>(page, "meals");
  expect(meal).toMatchObject({ dish: "plum soup", note: "they said vegetables only" });
  const sniffs = await rowsOf<{ id: string; headspace: { ohm: unknown[] } }>(page, "sniffs");
  expect(sniffs.map(({ id }) => id)).toEqual([meal?.sniffId]);
  expect(sniffs[0]?.headspace.ohm.length).toBeGreaterThan(0);
});

it("is taken in the very first visit too", async () => {
  const page = await context.newPage();
  await page.goto(host.url);
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await releaseSecondVersion();
  await lookForUpdate(page);
  await button(page, "Use it now").click();
  await page.locator("meta[name=version]").waitFor({ state: "attached" });
});

it("is put off by Later, and is offered again at the next start", async () => {
  const page = await openApp();
  await releaseSecondVersion();
  await lookForUpdate(page);
  await offer(page).waitFor();
  await button(page, "Later").click();
  await offer(page).waitFor({ state: "detached" });
  await page.reload();
  await offer(page).waitFor();
  expect(await versionOf(page)).toBe(0);
});

it("taken in one tab does not end a sniff in another, which is asked for itself afterwards", async () => {
  const [sniffing, other] = [await openApp(), await openApp()];
  await sniffing.bringToFront();
  await sniffUntilOverPlate(sniffing, "plum soup");
  await releaseSecondVersion();
  await lookForUpdate(other);
  await offer(other).waitFor();
  await button(other, "Use it now").click();
  await other.locator("meta[name=version]").waitFor({ state: "attached" });
  await sniffing.waitForTimeout(1000);
  expect(await isSameDocument(sniffing)).toBe(true);
  await button(sniffing, "Start the countdown").click();
  await button(sniffing, "Save as a meal").waitFor();
  expect([await isSameDocument(sniffing), await offer(sniffing).count()]).toEqual([true, 0]);
  await button(sniffing, "Done").click();
  await button(sniffing, "Use it now").click();
  await sniffing.locator("meta[name=version]").waitFor({ state: "attached" });
  await expect.poll(async () => (await rowsOf(sniffing, "sniffs")).length).toBe(1);
});
