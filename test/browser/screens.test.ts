// Every screen in every state, at phone size, in both themes: nothing that axe finds (WCAG 2.2 AA and best practice),
// nothing wider than the window, no target under 44 px, no error in the console.
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { launchChromium } from "./emulatedPeripheral.js";
import { buildGallery } from "./gallery/buildGallery.js";
import { faultsOf, galleryNames } from "./gallery/faultsOf.js";
import { serveFolder } from "./gallery/serveFolder.js";

const PHONE = { width: 390, height: 844 };
let browser: Browser;
let gallery: Awaited<ReturnType<typeof serveFolder>>;

beforeAll(async () => {
  browser = await launchChromium();
  gallery = await serveFolder(await buildGallery());
});
afterAll(async () => {
  gallery.server.close();
  await browser.close();
});

it.each([
  ["light", "en", false],
  ["dark", "de", false],
  ["light", "en", true],
] as const)(
  "has no fault on any screen, %s, in %s, with text doubled: %s",
  async (colorScheme, language, large) => {
    const context = await browser.newContext({ viewport: PHONE, colorScheme });
    const page = await context.newPage();
    const faults: string[] = [];
    page.on("console", (message) => message.type() === "error" && faults.push(message.text()));
    page.on("pageerror", (error) => faults.push(error.message));
    const names = await galleryNames(page, gallery.url);
    expect(names.length).toBeGreaterThan(70);
    for (const name of large ? names.filter((one) => /^(plate|check|finding)/.test(one)) : names) {
      await page.setViewportSize(PHONE);
      const found = await faultsOf(page, { url: gallery.url, name, language, large });
      faults.push(...found.map((fault) => `${name}: ${fault}`));
    }
    expect(faults).toEqual([]);
    await context.close();
  },
);

it.each([
  ["light", "en"],
  ["dark", "de"],
] as const)(
  "has no fault where the frame shows a bar of its own, %s, in %s",
  async (colorScheme, language) => {
    const context = await browser.newContext({ viewport: PHONE, colorScheme });
    const page = await context.newPage();
    const faults: string[] = [];
    for (const bar of ["offline", "missing", "update", "toast"]) {
      const name = `plate-filled&${bar}`;
      await page.setViewportSize(PHONE);
      const found = await faultsOf(page, { url: gallery.url, name, language, large: false });
      expect(await page.locator(".bar, .toast").count()).toBe(1);
      faults.push(...found.map((fault) => `${name}: ${fault}`));
    }
    expect(faults).toEqual([]);
    await context.close();
  },
);

it.each(["en", "de"])("moves nothing where another word is said of the air, in %s", async (language) => {
  const page = await browser.newPage();
  const placesIn = async (screen: string) => {
    await page.goto(`${gallery.url}?screen=${screen}&language=${language}`);
    await page.locator(".gauge").last().waitFor();
    return page.evaluate(() => {
      const from = document.querySelector(".stage")?.getBoundingClientRect().y ?? Number.NaN;
      const moving = [
        ".check__status",
        ".check__status + p",
        ".guide",
        ".gauge strong",
        ".gauge strong + span",
      ];
      return moving.map((what) =>
        [...document.querySelectorAll(what)].map((one) => {
          const { x, y } = one.getBoundingClientRect();
          return `${what} ${x.toFixed(1)} ${(y - from).toFixed(1)}`;
        }),
      );
    });
  };
  for (const width of [320, 360, 390, 768]) {
    await page.setViewportSize({ width, height: 844 });
    const start = await placesIn("check-clean-air-start");
    expect(start.flat().length).toBeGreaterThan(8);
    expect(await placesIn("check-clean-air-drift")).toEqual(start);
  }
  await page.close();
});
