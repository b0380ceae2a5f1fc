// A second sniffer over real `navigator.bluetooth` calls: what a nose says with it before and after it was moved by
// plates that both sniffed (issue 4; check MX-09: models do not move between units).
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import type { Sniff } from "../../src/sniff/sniff.js";
import { writeSniffFile } from "../../src/sniff/sniffFile.js";
import { transferNose } from "../../src/transfer/transferNose.js";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import { DEMO_NOSE, SECOND_ID, secondUnit, servedToTwo } from "../transfer/twoSniffers.js";
import { launchChromium } from "./emulatedPeripheral.js";
import { button, heading, layLossTable, pair, sniffPlate } from "./lossTable.js";

/** A unit whose plates show a gain. */
const SEED = 5;
const DISH = "papaya-beef"; // with meat
const SERVED = { onFirst: 24, onSecond: 60, seed: SEED };

let browser: Browser;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());

/** The same worked out here, on plain numbers: the worker must come to it too. */
function gainOf(samples: readonly Sniff[]): number {
  const sniffer = { id: SECOND_ID, channels: DEMO_LAYOUT.channels };
  const options = { id: "moved", name: "moved", transferredAt: "2026-11-25T18:00:00Z", sniffer };
  const moved = transferNose(DEMO_NOSE, samples, options);
  if (!moved.ok) throw new Error(`not moved: ${moved.error.kind}`);
  return moved.value.nose.transfer?.gain.factor ?? Number.NaN;
}

it("uncertain with a second sniffer; moved by shared plates, the next finding of that sniffer is judged", async () => {
  const layout = { ...DEMO_LAYOUT, snifferId: SECOND_ID };
  const unit = { seed: SEED, unit: secondUnit(SEED), unitSeed: 2, ageDays: 0, layout };
  const table = await layLossTable(browser, inject("appUrl"), undefined, { unit });
  const shared = servedToTwo(SERVED);
  const { page } = table;
  try {
    await pair(table);
    await sniffPlate(table, DISH);
    for (const verdict of await page.locator("[data-group] .finding__verdict").allTextContents())
      expect(verdict).toMatch(/uncertain/i);
    await page
      .getByText(/another sniffer/i)
      .first()
      .waitFor();
    await button(page, "Done").click();
    table.sniffer.serveDish(null);

    await page.goto(`${inject("appUrl")}#/nose/transfer`);
    await page.getByText(/5 more plates sniffed on both are needed/).waitFor();
    expect(page.workers()).toHaveLength(1); // it was not worked out on the page's own thread
    const path = join(mkdtempSync(join(tmpdir(), "nidor-two-")), "two.jsonl");
    writeFileSync(path, writeSniffFile(shared));
    await page.goto(`${inject("appUrl")}#/nose/versions`);
    await page.getByLabel("Bring in samples (sniff file)").setInputFiles(path);
    await page.getByText("84 samples came in.").waitFor();

    await page.goto(`${inject("appUrl")}#/nose/transfer`);
    await page.getByText("24 plates so far").waitFor();
    await page.getByText(`differ ${gainOf(shared).toFixed(2)} times less`).waitFor();
    await page.getByText(/plates of the connected sniffer that it was not taught: 60 so far/).waitFor();
    await button(page, "Look at the moved nose").click();
    await heading(page, "A nose moved to another sniffer").waitFor();
    await page.getByText(/Both were tried on plates of the second sniffer/).waitFor();
    await button(page, "Use this nose").click();
    await page
      .getByText(/Moved from sniffer .* by 24 plates that both sniffed/)
      .first()
      .waitFor();
    await page.goto(`${inject("appUrl")}#/nose/versions`);
    await page.getByText(/Moved from sniffer .* by 24 plates that both sniffed/).waitFor();

    await page.goto(`${inject("appUrl")}#/plate`);
    await sniffPlate(table, DISH);
    const withMeat = shared.filter(
      ({ sniffer, groups }) => sniffer.id === SECOND_ID && groups.meat === "present",
    );
    const card = (await page.locator('[data-group="meat"]').textContent()) ?? "";
    expect(card).toContain(`Tried on ${withMeat.length} plates with it`);
    expect(card).toMatch(/Chance that it is there: 9\d%/);
    expect(await page.getByText(/another sniffer/i).count()).toBe(0);
  } finally {
    await table.clear();
  }
}, 300_000);
