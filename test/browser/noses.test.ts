// Noses in a real browser at phone size: files that are none, cut short, of another format or other channels, or huge;
// a nose from a file beside the one in use; taking it, and putting the other back; a refresh with fresh samples.
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject, it } from "vitest";
import { demoSamples } from "../../src/virtual/demoSamples.js";
import { launchChromium } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";

const PHONE = { width: 390, height: 844 };
const REFRESHING_MS = 400_000;
const DEMO = readFileSync("models/demo.nose.json", "utf8");
const folder = mkdtempSync(join(tmpdir(), "nidor-noses-"));

let browser: Browser;
let context: BrowserContext;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(async () => {
  await context.close();
  expect(faults.splice(0)).toEqual([]);
});

const button = (name: string | RegExp) => page.getByRole("button", { name });
const heading = (name: string | RegExp) => page.getByRole("heading", { name });

async function open(place: string): Promise<void> {
  context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
  await introduced(context);
  page = await context.newPage();
  page.setDefaultTimeout(30_000);
  page.on("pageerror", (error) => faults.push(error.message));
  await page.goto(`${inject("appUrl")}#/${place}`);
}

/** A file with the given text, brought in where a nose is asked for. */
async function bringIn(name: string, text: string): Promise<void> {
  const path = join(folder, name);
  writeFileSync(path, text);
  await page.getByLabel("Bring in a nose file").setInputFiles(path);
}

const changed = (change: (nose: Record<string, unknown>) => void): string => {
  const nose = JSON.parse(DEMO) as Record<string, unknown>;
  change(nose);
  return JSON.stringify(nose);
};
const other = changed((nose) => {
  nose["id"] = "from-a-friend";
  nose["name"] = "From a friend";
});

it("says what is wrong with each file that is no nose, and keeps the nose in use", async () => {
  await open("nose/versions");
  await heading(/Demo nose/).waitFor();
  const cases: readonly (readonly [string, string, RegExp])[] = [
    ["cut-short", DEMO.slice(0, DEMO.length / 2), /cut short. Export it again/],
    ["empty", "", /not a nose file/],
    ["deep", "[".repeat(200_000), /not a nose file/],
    ["a-list", "[1, 2, 3]", /format “none”/],
    ["later", changed((nose) => (nose["format"] = "nidor-nose/9")), /format “nidor-nose\/9”.*Update the app/],
    ["damaged", changed((nose) => (nose["groups"] = 7)), /damaged at “groups”/],
    [
      "deep-inside",
      DEMO.replace('"nets":', `"nets":${"[".repeat(5000)}${"]".repeat(5000)},"was":`),
      /damaged at/,
    ],
    ["huge", " ".repeat(17 * 1024 * 1024), /too large to be a nose/],
    ["known", DEMO, /among your versions already/],
  ];
  for (const [name, text, words] of cases) {
    await bringIn(`${name}.json`, text);
    await page.getByText(words).waitFor();
  }
  expect(await heading(/Demo nose/).count()).toBe(1);
  await page.goto(`${inject("appUrl")}#/nose`);
  await heading(/Demo nose/).waitFor();
}, 120_000);

it("refuses a nose of other channels than the connected sniffer has, and says what to do", async () => {
  await open("plate");
  await button(/practice|virtual/i)
    .first()
    .click();
  await button("Check this plate").and(page.locator(":not([aria-disabled=true])")).waitFor();
  await page.goto(`${inject("appUrl")}#/nose/versions`);
  // A nose that holds together, for one sensor heated otherwise.
  const text = readFileSync("test/fixtures/noses/beforeSampleChecks.nose.json", "utf8");
  await bringIn("other-channels.json", text);
  await page.getByText(/taught on other channels.*Connect the one it was taught on/).waitFor();
  expect(await heading("Taught before the sample checks").count()).toBe(0);
}, 60_000);

it("opens a nose of the form before the sample checks, with its report", async () => {
  await open("nose/versions");
  await bringIn("old-form.json", readFileSync("test/fixtures/noses/beforeSampleChecks.nose.json", "utf8"));
  await heading("A nose from a file").waitFor();
  await page.getByText("There is no plate that both could be tried on").waitFor();
  await button("Use this nose").click();
  await heading("A nose from a file").waitFor({ state: "hidden" }); // it leads to Nose when it is in use
  await page.goto(`${inject("appUrl")}#/nose/report`);
  await page.getByText("Not worked out for this nose").first().waitFor();
}, 60_000);

it("puts a nose from a file beside the one in use on the same plates; taken, it can be put back again", async () => {
  await open("nose/versions");
  await bringIn("friend.json", other);
  await heading("A nose from a file").waitFor();
  // The same numbers under another name: nothing can be better or worse.
  await page.getByText(/Both were tried on the same plates, up to 208 a group/).waitFor();
  await page.getByText(/^No clear difference: finding (meat|alcohol)/).waitFor();
  expect(await page.getByText(/^Better:|^Worse:/).count()).toBe(0);
  await button("Use this nose").click();
  await heading("From a friend").waitFor();
  await page.goto(`${inject("appUrl")}#/nose/versions`);
  await button(/Compare and put back: Demo nose/).click();
  await heading("Put this nose back?").waitFor();
  await page.getByText(/Both were tried on the same plates/).waitFor();
  await button("Leave it as it is").click();
  await heading("From a friend").waitFor();
  await page.goto(`${inject("appUrl")}#/nose/versions`);
  await button(/Compare and put back: Demo nose/).click();
  await button("Put it back").click();
  await heading(/Demo nose/).waitFor();
  await page.goto(`${inject("appUrl")}#/nose/versions`);
  await page.getByText("What was decided").click();
  await page.getByText(/Demo nose.*: put back/).waitFor();
}, 120_000);

it("refreshes the nose in use with fresh samples, shows the gain on them, and takes a no", async () => {
  await open("nose/versions");
  // As if taught a year ago, by the same virtual sniffer; the fresh samples are from 200 days after the first evening.
  await bringIn(
    "year-old.json",
    changed((nose) => {
      nose["id"] = "year-old";
      nose["name"] = "A year old";
      nose["taughtAt"] = "2026-01-01T00:00:00Z";
    }),
  );
  await button("Use this nose").click();
  await heading("A year old").waitFor();
  await page.getByText("Fresh samples are worthwhile").waitFor();
  await page.getByText("Meat: 5 more with it, 5 more without").waitFor();
  const fresh = demoSamples({ plates: 10, seed: 5, laterDays: 200 });
  const path = join(folder, "fresh.jsonl");
  writeFileSync(path, fresh.map((sniff) => `${JSON.stringify(sniff)}\n`).join(""));
  await page.goto(`${inject("appUrl")}#/nose/versions`);
  await page.getByLabel("Bring in samples (sniff file)").setInputFiles(path);
  await page.getByText("10 samples came in.").waitFor();
  await page.goto(`${inject("appUrl")}#/nose`);
  await button("Bring it up to date").click();
  await page.getByText("Bring the nose in use up to date with 10 fresh plates").waitFor();
  await page.getByText(/Of the 208 plates that this nose was taught, 0 are here/).waitFor();
  await page.getByLabel("Name of the nose").fill("Fresh again");
  await button("Bring it up to date").click();
  await page.getByRole("progressbar").waitFor();
  await heading("The nose is brought up to date").waitFor({ timeout: REFRESHING_MS });
  await page.getByText(/Tried on 10 fresh plates/).waitFor();
  await page.getByText(/So few plates can hardly show a difference/).waitFor();
  await button("Keep the old nose").click();
  await heading("A year old").waitFor();
  await page.goto(`${inject("appUrl")}#/nose/versions`);
  await heading("Fresh again").waitFor();
}, 500_000);
