// A second sniffer over real `navigator.bluetooth` calls: what a nose says with it before and after it was moved by
// plates that both sniffed (issue 4; check MX-09: models do not move between units).
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, it } from "vitest";
import { findPlate } from "../../src/finding/findPlate.js";
import { USUAL_ACCEPTED_MISS_RATE } from "../../src/flows/preferences.js";
import type { Nose } from "../../src/nose/nose.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { writeSniffFile } from "../../src/sniff/sniffFile.js";
import { finding as englishFinding } from "../../src/text/en/finding.js";
import { transferNose } from "../../src/transfer/transferNose.js";
import { DEMO_LAYOUT } from "../../src/virtual/snifferState.js";
import { DEMO_NOSE, SECOND_ID, secondUnit, servedToTwo } from "../transfer/twoSniffers.js";
import { launchChromium } from "./emulatedPeripheral.js";
import { button, heading, keptSniffs, layLossTable, pair, sniffPlate } from "./lossTable.js";

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
function movedBy(samples: readonly Sniff[]): Nose {
  const sniffer = { id: SECOND_ID, channels: DEMO_LAYOUT.channels };
  const options = { id: "moved", name: "moved", transferredAt: "2026-11-25T18:00:00Z", sniffer };
  const moved = transferNose(DEMO_NOSE, samples, options);
  if (!moved.ok) throw new Error(`not moved: ${moved.error.kind}`);
  return moved.value.nose;
}

const gainOf = (nose: Nose): number => nose.transfer?.gain.factor ?? Number.NaN;

/** Every card shows what the moved nose says of the sweeps that were kept, and none that they are another sniffer's. */
async function expectAsWorkedOut(page: Page, nose: Nose): Promise<void> {
  const kept = (await keptSniffs(page)).filter(({ dish }) => dish === "");
  const [sniff] = kept.sort((a, b) => Date.parse(b.takenAt) - Date.parse(a.takenAt));
  if (sniff === undefined) throw new Error("the sniff was not kept");
  const groups = nose.groups.map(({ name }) => name);
  const found = findPlate(nose, sniff, {
    groups,
    acceptedMissRate: USUAL_ACCEPTED_MISS_RATE,
    allergyGroups: [],
  });
  const shown = await page.locator("article[data-group]").evaluateAll((cards) =>
    cards.map((card) => ({
      group: card.getAttribute("data-group"),
      verdict: card.querySelector(".finding__verdict")?.textContent,
      chance: card.querySelector(".finding__chance")?.textContent,
      reasons: [...card.querySelectorAll("[data-reason]")].map((item) => item.getAttribute("data-reason")),
    })),
  );
  const { verdicts, chance } = englishFinding;
  const words = {
    smelled: verdicts.smelled,
    "not smelled": verdicts.notSmelled,
    uncertain: verdicts.uncertain,
  };
  const inOrder = <T extends { readonly group: string | null }>(rows: readonly T[]) =>
    rows.toSorted((a, b) => String(a.group).localeCompare(String(b.group)));
  expect(inOrder(shown)).toEqual(
    inOrder(
      found.groups.map(({ group, verdict, probability, reasons }) => ({
        group,
        verdict: words[verdict],
        chance: chance(`${Math.round(100 * (probability ?? Number.NaN))}%`),
        reasons: reasons.map(({ kind }) => kind),
      })),
    ),
  );
  expect(shown.flatMap(({ reasons }) => reasons)).not.toContain("otherSniffer");
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
    await page.getByText(`differ ${gainOf(movedBy(shared)).toFixed(2)} times less`).waitFor();
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
    await expectAsWorkedOut(page, movedBy(shared));
  } finally {
    await table.clear();
  }
}, 300_000);
