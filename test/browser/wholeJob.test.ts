// The whole job in a real browser at phone size, over real `navigator.bluetooth` calls: pair, check a plate, walk out
// of range, save a meal and open it offline, keep a sample, teach a nose and check with it.
import { execFileSync } from "node:child_process";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from "vitest";
import type { CharacteristicAddress } from "../../src/kernel/link.js";
import { LAYOUT, SWEEP } from "../../src/profile/uuids.js";
import { launchChromium, startEmulatedPeripheral, type EmulatedPeripheral } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";
import { MAY_CRASH } from "./mayCrash.js";
import { tableSniffer, type TableSniffer } from "./tableSniffer.js";

const PHONE = { width: 390, height: 844 };
/** Long enough for the warm-up, clean air and the plate at the test's pace on a slow machine. */
const PATIENCE_MS = 90_000;
const TEACHING_MS = 240_000;

interface Table {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly sniffer: TableSniffer;
  readonly peripheral: EmulatedPeripheral;
  /** Stops its time, and the pump once what it said so far is heard. */
  readonly stop: () => Promise<void>;
}

let browser: Browser;
let clearTable: () => Promise<void> = async () => undefined;

beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(() => clearTable());

/** A phone with the app open, and a sniffer in range. */
async function layTable(
  garble?: (address: CharacteristicAddress, bytes: Uint8Array) => Uint8Array,
): Promise<Table> {
  if (!browser.isConnected()) browser = await launchChromium();
  const context = await browser.newContext({ viewport: PHONE, locale: "en-GB" });
  await introduced(context);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  const sniffer = tableSniffer(7, garble);
  const peripheral = await startEmulatedPeripheral(browser, page, sniffer);
  await page.goto(inject("appUrl"));
  const stopTime = sniffer.run();
  const stopPump = peripheral.pumpEvery(25);
  clearTable = async () => {
    stopTime();
    if (!browser.isConnected()) return;
    await stopPump();
    await peripheral.stop();
    await context.close();
  };
  const stop = async () => {
    stopTime();
    await stopPump();
  };
  return { page, context, sniffer, peripheral, stop };
}

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const heading = (page: Page, name: string | RegExp) => page.getByRole("heading", { name });

async function pair({ page, peripheral }: Table): Promise<void> {
  await button(page, "Pair a sniffer").click();
  await peripheral.answerChooser("choose");
}

async function checkPlate({ page, sniffer }: Table, dish: string): Promise<void> {
  await button(page, "Check this plate").click();
  await heading(page, "The air is steady").waitFor();
  sniffer.serveDish(dish);
  await button(page, "Start the countdown").click();
  await button(page, "Save as a meal").waitFor();
  sniffer.serveDish(null);
}

describe("a check at the table over Web Bluetooth", () => {
  it("pairs by one tap and goes through warm-up, clean air and plate to a finding", async () => {
    const table = await layTable();
    await pair(table);
    await table.page.getByText("Table sniffer").waitFor();
    await button(table.page, "Check this plate").click();
    await heading(table.page, "Warming up").waitFor();
    await heading(table.page, "The air is steady").waitFor();
    table.sniffer.serveDish("beef-broth");
    await button(table.page, "Start the countdown").click();
    await heading(table.page, "Sniffing the plate").waitFor();
    await button(table.page, "Save as a meal").waitFor();
    const meat = table.page
      .locator("article, section")
      .filter({ has: heading(table.page, /meat/i) })
      .first();
    expect(await meat.textContent()).toMatch(/smelled|uncertain/i);
  });

  it("goes back to the start when the chooser is closed, and says nothing", async () => {
    const { page, peripheral } = await layTable();
    await button(page, "Pair a sniffer").click();
    await peripheral.answerChooser("cancel");
    await page.getByText("No sniffer yet").waitFor();
  });

  it("keeps the sniff so far when the user walks out of range over the plate", async () => {
    const table = await layTable();
    const { page, peripheral, sniffer, stop } = table;
    await pair(table);
    await button(page, "Check this plate").click();
    await heading(page, "The air is steady").waitFor();
    sniffer.serveDish("beef-broth");
    await button(page, "Start the countdown").click();
    await page.getByText(/so far, not a finding/i).waitFor();
    // The emulation tells no loss while a read is under way, and the check must not end meanwhile.
    await stop();
    await peripheral.disconnect();
    await page.locator('[data-phase="interrupted"]').waitFor();
    // A reload must not lose it either.
    await page.reload();
    await page
      .getByText(/cut short/i)
      .first()
      .waitFor();
  });

  it("keeps the sniff as a sample, teaches a new nose from the samples, and checks the next plate with it", async () => {
    const table = await layTable();
    const { page } = table;
    await pair(table);
    await checkPlate(table, "mushroom-broth");
    await button(page, "Keep as a sample").click();
    await heading(page, "Keep as a sample").waitFor();
    await page.getByLabel("Dish", { exact: true }).fill("Mushroom broth at table four");
    for (const group of ["Meat", "Fish", "Shellfish", "Egg"]) {
      const choices = page.getByRole("group", { name: group, exact: true });
      await choices.getByRole("radio", { name: "not in it", exact: true }).check();
    }
    await button(page, "Keep it").click();
    await page.getByText("Mushroom broth at table four").waitFor();
    await button(page, "Bring in the demo samples").click();
    await button(page, "Remove all demo data").waitFor();
    await page.goto(`${inject("appUrl")}#/nose/teach`);
    await page.getByText("209 samples").waitFor();
    await page.getByLabel("Name of the nose").fill("Table four");
    await button(page, "Start teaching").click();
    await page.getByRole("progressbar").waitFor();
    await button(page, "Use the new nose").click({ timeout: TEACHING_MS });
    await heading(page, "Table four").waitFor();
    await page.goto(`${inject("appUrl")}#/plate`);
    await button(page, "Done").click();
    await page.getByText("Table four").waitFor();
    await checkPlate(table, "beef-broth");
    await page.getByText("Meat", { exact: true }).first().waitFor();
    await page.getByText("What this rests on").first().click();
    await page
      .getByText(/Table four/)
      .first()
      .waitFor();
  });

  it("saves the plate as a meal, and opens it again after a reload without a network", async () => {
    const table = await layTable();
    const { page, context } = table;
    await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => true));
    await pair(table);
    await page.getByLabel("Dish", { exact: true }).fill("Clear broth");
    await checkPlate(table, "beef-broth");
    await button(page, "Save as a meal").click();
    await page.getByLabel("Place", { exact: true }).fill("Night market, third stall");
    await page.getByLabel("Note", { exact: true }).fill("they said vegetables only");
    await button(page, "Save the meal").click();
    await heading(page, "Clear broth").waitFor();
    await context.setOffline(true);
    await page.goto(`${inject("appUrl")}#/meals`);
    await page.reload();
    await page.getByRole("link", { name: /Clear broth.*third stall/ }).waitFor();
    await page.getByRole("link", { name: /Clear broth/ }).click();
    await page.getByText("they said vegetables only").waitFor();
    expect(await page.locator("[data-group=meat] .finding__verdict").textContent()).toMatch(
      /smelled|uncertain/i,
    );
  });

  it("finds the same as the command line does on the same sniff", async () => {
    const table = await layTable();
    const { page } = table;
    await pair(table);
    await checkPlate(table, "seafood-pot");
    const shown = await page
      .locator("article[data-group]")
      .evaluateAll((cards) =>
        cards.map((card) => [
          card.getAttribute("data-group"),
          card.querySelector("[data-tone]")?.getAttribute("data-tone"),
        ]),
      );
    await button(page, "Keep as a sample").click();
    const choices = page.getByRole("group", { name: "Fish", exact: true });
    await choices.getByRole("radio", { name: "in it", exact: true }).check();
    await button(page, "Keep it").click();
    await heading(page, "Kept samples").waitFor();
    await page.goto(`${inject("appUrl")}#/nose/versions`);
    const [file] = await Promise.all([
      page.waitForEvent("download"),
      button(page, "Save all samples as a file").click(),
    ]);
    const told = execFileSync("npx", [
      "--no-install",
      "tsx",
      "src/cli/nidor.ts",
      "check",
      "models/demo.nose.json",
      await file.path(),
    ]);
    const { groups } = JSON.parse(String(told)) as { groups: Record<string, { finding: string }> };
    const tones: Record<string, string> = {
      smelled: "smelled",
      "not smelled": "notSmelled",
      uncertain: "uncertain",
    };
    expect(shown.length).toBeGreaterThanOrEqual(4);
    expect(Object.fromEntries(shown)).toEqual(
      Object.fromEntries(Object.entries(groups).map(([group, { finding }]) => [group, tones[finding]])),
    );
  });

  it("stops teaching when asked to, and changes nothing", async () => {
    const { page } = await layTable();
    await page.goto(`${inject("appUrl")}#/nose/samples`);
    await button(page, "Bring in the demo samples").click();
    await button(page, "Remove all demo data").waitFor();
    await page.goto(`${inject("appUrl")}#/nose/teach`);
    await button(page, "Start teaching").click();
    await button(page, "Stop teaching").click();
    await button(page, "Start teaching").waitFor();
    await page.goto(`${inject("appUrl")}#/nose`);
    await heading(page, /Demo nose/).waitFor();
  });

  it.each([
    ["the layout", LAYOUT],
    ["the sweeps", SWEEP],
    // A sniffer that garbles its layout is refused right after it was discovered.
  ])("draws nothing from a sniffer that changes one byte of %s", MAY_CRASH, async (_what, changed) => {
    await browser.close();
    browser = await launchChromium();
    const table = await layTable((address, bytes) => {
      if (address.characteristic !== changed.characteristic) return bytes;
      const copy = Uint8Array.from(bytes);
      copy[2] = (copy[2] ?? 0) ^ 0x01;
      return copy;
    });
    await pair(table);
    if (changed === LAYOUT) {
      await table.page
        .getByText(/could not be read|garbled|check/i)
        .first()
        .waitFor();
      expect(await button(table.page, "Check this plate").getAttribute("aria-disabled")).toBe("true");
    } else {
      await button(table.page, "Check this plate").click();
      await table.page.locator('[data-phase="interrupted"]').waitFor();
      expect(await button(table.page, "Save as a meal").count()).toBe(0);
    }
    await table.stop();
    // Switching this radio off after a refused discovery ends Chromium on a busy machine: it goes with its browser.
    await browser.close();
  });
});
