// The whole job without a finger or a mouse: Tab, Shift+Tab, Enter, Space and arrows, as WCAG 2.2 asks for in 2.1.1
// (keyboard), 2.4.3 (focus order), 2.4.7 (focus visible) and 4.1.3 (status messages).
import type { Page } from "playwright-core";
import { expect, inject, it } from "vitest";
import { listenTo, timesHeard } from "./heard.js";
import { usePhones } from "./usePhones.js";

const PATIENCE_MS = 90_000;
/** More stops than any page on the way has. */
const MOST_TABS = 80;

const newContext = usePhones();

async function listeningPhone(): Promise<Page> {
  const context = await newContext();
  await listenTo(context);
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(inject("appUrl"));
  return page;
}

interface Stop {
  /** Words by which the control with the focus is known. */
  readonly name: string;
  readonly isBody: boolean;
  /** Drawn around it, in px. */
  readonly ringPx: number;
}

function focusNow(page: Page): Promise<Stop> {
  return page.evaluate(() => {
    const element = document.activeElement ?? document.body;
    const label = element instanceof HTMLInputElement ? (element.labels?.[0] ?? null) : null;
    // A choice hides its input and draws the ring around its label.
    const rings = [element, label, label?.querySelector("span") ?? null, element.nextElementSibling].flatMap(
      (one) => (one === null ? [] : [getComputedStyle(one)]),
    );
    const widths = rings.map(({ outlineStyle, outlineWidth }) =>
      outlineStyle === "none" ? 0 : parseFloat(outlineWidth),
    );
    const words = element.getAttribute("aria-label") ?? label?.textContent ?? element.textContent;
    return { name: words.trim(), isBody: element === document.body, ringPx: Math.max(...widths) };
  });
}

/** Tabs on until the control has the focus; each stop on the way must be seen. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  const isIt = (stop: Stop) => (typeof name === "string" ? stop.name === name : name.test(stop.name));
  const met: string[] = [];
  for (let step = 0; step < MOST_TABS; step += 1) {
    await page.keyboard.press("Tab");
    const stop = await focusNow(page);
    // After the last control the browser's own bar has the turn.
    if (stop.isBody) continue;
    expect(stop.ringPx, `the ring around “${stop.name}”`).toBeGreaterThanOrEqual(2);
    if (isIt(stop)) return;
    met.push(stop.name);
  }
  throw new Error(`Tab never came to ${String(name)}, but to ${met.join(" | ")}`);
}

async function press(page: Page, name: string | RegExp, key = "Enter"): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

/** The page has opened, and the focus stands on its title: the next Tab goes on from there. */
async function arrived(page: Page, title: string | RegExp): Promise<void> {
  await page.getByRole("heading", { name: title, level: 1 }).waitFor();
  await expect.poll(async () => (await focusNow(page)).name, { timeout: 5_000 }).toMatch(title);
}

async function throughFirstRun(page: Page): Promise<void> {
  for (const step of ["1 of 4", "2 of 4", "3 of 4"]) {
    await page.getByText(step).waitFor();
    // A Tab before the focus stands on the new title would go on from the old page.
    if (step !== "1 of 4") await arrived(page, (await page.locator("main h1").textContent()) ?? "");
    await press(page, "Next");
    expect((await focusNow(page)).isBody, `the focus is lost after ${step}`).toBe(false);
  }
  await page.getByText("4 of 4").waitFor();
  await press(page, /virtual sniffer/i);
}

async function overThePlate(page: Page): Promise<void> {
  await press(page, "Check this plate");
  await page.getByRole("button", { name: "Start the countdown" }).waitFor();
  await arrived(page, /air is steady/i);
  await press(page, "Start the countdown");
  await arrived(page, /sniffing the plate/i);
  await page.locator("article[data-group]").first().waitFor();
}

it("is done with the keyboard alone, from the first page to the truth about a meal", async () => {
  const page = await listeningPhone();
  await throughFirstRun(page);
  await arrived(page, "What is on the plate?");

  await page.locator("[aria-disabled=true]").getByText("Check this plate").waitFor({ state: "detached" });
  await tabTo(page, "Dish");
  await page.keyboard.type("tom yu");
  // What the first letters asked for may still stand there for a picture.
  const suggestion = page
    .locator(".suggestions button")
    .filter({ hasText: /tom yu/i })
    .first();
  const taken = (await suggestion.textContent()) ?? "";
  await press(page, taken);
  await expect.poll(() => page.locator("#dish").inputValue()).toBe(taken);
  await expect.poll(async () => (await focusNow(page)).name).toBe("Dish");

  await overThePlate(page);
  const headline = await page.getByRole("heading", { level: 1 }).textContent();
  await expect.poll(async () => (await focusNow(page)).name).toBe(headline);
  for (const phase of [
    "The air is steady. Start the countdown, then bring the sniffer over the plate.",
    "Sniffing the plate.",
    "The finding is there.",
  ])
    expect(await timesHeard(page, phase), phase).toBe(1);

  await press(page, "Save as a meal");
  await arrived(page, "New meal");
  await press(page, "Save the meal");
  await arrived(page, taken);
  await press(page, "Enter what it was");
  await arrived(page, "What was in it?");
  await tabTo(page, "unknown");
  await page.keyboard.press("ArrowLeft");
  const chosen = await page.evaluate(() => document.activeElement?.matches("input:checked"));
  expect(chosen).toBe(true);
  await press(page, "Save");
  await arrived(page, taken);
  expect(await timesHeard(page, "The finding is there.")).toBe(1);
}, 240_000);
