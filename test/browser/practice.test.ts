// Faults of the virtual sniffer, for practice: what the app says of each, that nothing recorded is lost and nothing is
// invented, and that all is sound again afterwards.
import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { arrive, holdTime, leave, runUntil, stepUntil, takeTime } from "./heldTime.js";
import { introduced } from "./introduced.js";
import { button, heading, keptSniffs, phase } from "./lossTable.js";
import { usePhones } from "./usePhones.js";

const PATIENCE_MS = 60_000;
const phone = usePhones();

/**
 * A phone with the virtual sniffer in hand and these faults chosen. Its time stands still but for what the test lets
 * pass: a sniffer that ran on while the machine was busy would be another each time.
 */
async function practising(...names: readonly string[]): Promise<Page> {
  const context = await phone();
  await introduced(context);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await takeTime(page);
  await page.goto(`${inject("appUrl")}#/nose`);
  await button(page, /Practise with faults/).click();
  for (const name of names) await page.getByRole("switch", { name }).click();
  await button(page, "Use the virtual sniffer").waitFor();
  await holdTime(page);
  await button(page, "Use the virtual sniffer").click();
  await arrive(page, button(page, "Disconnect"));
  return page;
}

const go = (page: Page, place: string) => page.goto(`${inject("appUrl")}#/${place}`);
const faultsOn = (page: Page) => page.getByText("Practice: faults are on");

async function overPlate(page: Page): Promise<void> {
  await go(page, "plate");
  await arrive(page, page.getByLabel("Served"));
  await page.getByLabel("Served").selectOption("beef-broth");
  await button(page, "Check this plate").click();
  await runUntil(page, button(page, "Start the countdown"));
  await button(page, "Start the countdown").click();
  await runUntil(page, phase(page, "headspace"));
}

const toFinding = (page: Page) => runUntil(page, button(page, "Save as a meal"));

async function expectAllUncertain(page: Page): Promise<void> {
  await arrive(page, page.locator("[data-group]"));
  const verdicts = await page.locator("[data-group] .finding__verdict").allTextContents();
  expect(verdicts.length).toBeGreaterThan(3);
  for (const verdict of verdicts) expect(verdict).toMatch(/uncertain/i);
}

async function onlySniff(page: Page) {
  await stepUntil(page, 10, async () => (await keptSniffs(page)).length > 0, "a sniff that is kept");
  expect(await keptSniffs(page)).toHaveLength(1);
  const [sniff] = await keptSniffs(page);
  if (sniff === undefined) throw new Error("the sniff was not kept");
  return sniff;
}

describe("practice with a fault", () => {
  it("a stuck channel is told, with the finding and by the fitness; turned off, the next plate has none of it", async () => {
    const page = await practising("Stuck channel");
    await overPlate(page);
    await arrive(page, faultsOn(page)); // in a running check too, with nothing to tap by mistake
    expect(await button(page, "Turn all off").count()).toBe(0);
    await toFinding(page);
    await expectAllUncertain(page);
    expect(await page.getByText(/1 channel stood still/).count()).toBeGreaterThan(3);
    await button(page, "Done").click();
    await go(page, "nose/fitness");
    await arrive(page, page.getByText("Stuck or at the end of the range: channel 3."));
    await button(page, "Turn all off").click();
    await leave(page, faultsOn(page));
    await overPlate(page);
    await toFinding(page);
    expect(await page.getByText(/stood still|No chance can be worked out/).count()).toBe(0);
  });

  it("a humid headspace is told", async () => {
    const page = await practising("Much steam");
    await overPlate(page);
    await toFinding(page);
    await expectAllUncertain(page);
    await arrive(page, page.getByText("The sniffer is too damp."));
  });

  it("a restart in mid-sniff is told: what was recorded is kept whole, and nothing is added to it", async () => {
    const page = await practising("Restart in mid-sniff");
    await overPlate(page);
    await runUntil(page, heading(page, "The sniffer began anew"));
    const told = await page.getByText(/^Kept: [678] sweeps over the plate/).textContent();
    const kept = Number(told?.match(/\d/)?.[0]); // 16 s at 2 s a sweep, begun anywhere within one
    await page.clock.runFor(3000); // 24 s of its own time: more would have come
    await button(page, "Use what was gathered").click();
    await toFinding(page);
    await expectAllUncertain(page);
    const { headspace } = await onlySniff(page);
    expect(headspace.atMs).toEqual(Array.from({ length: kept }, (_, sweep) => 2000 * sweep));
  });

  it("a lost link comes back by itself, and the sniff goes on whole but for the sweeps of the hole", async () => {
    const page = await practising("Lost link");
    await overPlate(page);
    await runUntil(page, phase(page, "interrupted"));
    await runUntil(page, phase(page, "headspace"));
    await toFinding(page);
    const { headspace, flags } = await onlySniff(page);
    expect(flags ?? []).not.toContain("linkLost");
    const holes = headspace.atMs.flatMap((atMs, i, all) => {
      const sinceMs = atMs - (all[i - 1] ?? atMs - 2000);
      return sinceMs === 2000 ? [] : [sinceMs];
    });
    // None where it was back before the next sweep began.
    expect(holes.length).toBeLessThanOrEqual(1);
    expect(Math.max(0, ...holes)).toBeLessThanOrEqual(10_000);
    expect(headspace.atMs.at(-1)).toBeGreaterThan(30_000);
  });

  it("lost and garbled notifications are told; a fault that only a wrong octet told is none", async () => {
    for (const name of ["Lost notifications", "Garbled notifications"]) {
      const page = await practising(name);
      await overPlate(page);
      await toFinding(page);
      await arrive(page, page.getByText(/Too many sweeps were lost/));
      await page.context().close();
    }
  });

  it("a broken heater stops the check with words", async () => {
    const page = await practising("Broken heater");
    await overPlate(page);
    await runUntil(page, heading(page, "The sniffer reports a fault"));
  });

  it("another unit is not trusted; exchanged back, the nose is in use again", async () => {
    const page = await practising("Another sniffer");
    await overPlate(page);
    await toFinding(page);
    await expectAllUncertain(page);
    expect(await page.getByText(/taught on another sniffer/).count()).toBeGreaterThan(3);
    await button(page, "Done").click();
    await button(page, "Turn all off").click();
    await overPlate(page);
    await toFinding(page);
    expect(await page.getByText(/taught on another sniffer/).count()).toBe(0);
  });

  it("poisoning brings the check jar's alarm within a few sniffs, and findings are uncertain then", async () => {
    const page = await practising();
    for (let reading = 0; reading < 11; reading += 1) await sniffJar(page);
    await arrive(page, page.getByText(/^In control/));
    await go(page, "nose/practice");
    await arrive(page, page.getByRole("switch", { name: "Poisoning" }));
    await page.getByRole("switch", { name: "Poisoning" }).click();
    const alarm = page.getByText(/^Out of control/);
    for (let sniffs = 0; (await alarm.count()) === 0; sniffs += 1) {
      expect(sniffs).toBeLessThan(12);
      await sniffJar(page);
    }
    await overPlate(page);
    await toFinding(page);
    await expectAllUncertain(page);
    expect(await page.getByText("The check jar says this sniffer has drifted.").count()).toBeGreaterThan(3);
  });

  it("is seen on every page while it is on, and is off after a reload", async () => {
    const page = await practising("Stuck channel", "Much steam");
    for (const place of ["plate", "meals", "nose", "you", "nose/practice"]) {
      await go(page, place);
      await arrive(page, page.getByText("Stuck channel · Much steam. Of the virtual sniffer only."));
    }
    await page.reload();
    await arrive(page, heading(page, "Practise with faults"));
    expect(await faultsOn(page).count()).toBe(0);
    expect(await page.getByRole("switch", { checked: true }).count()).toBe(0);
  });
});

async function sniffJar(page: Page): Promise<void> {
  await go(page, "nose/fitness");
  await arrive(page, button(page, "Sniff the check jar"));
  await button(page, "Sniff the check jar").click();
  await runUntil(page, button(page, "Start the countdown"));
  await button(page, "Start the countdown").click();
  await runUntil(page, heading(page, "The sniffer’s fitness"));
}
