// Meals in a real browser at phone size: log, edit, delete, photo, truth, reaction, search, offline, two tabs.
import type { BrowserContext, Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { manyMeals } from "../meals/manyMeals.js";
import { introduced } from "./introduced.js";
import {
  demoIds,
  firstScreenMs,
  jpegOf,
  keyPressesMs,
  noiseOf,
  photoBytes,
  putMeals,
  rowsOf,
  tagsOf,
  withExif,
} from "./mealsTable.js";
import { usePhones } from "./usePhones.js";

const PATIENCE_MS = 60_000;

const newContext = usePhones();
let context: BrowserContext;

async function openMeals(address = "#/meals"): Promise<Page> {
  context = await newContext({
    timezoneId: "Europe/Berlin",
    acceptDownloads: true,
  });
  await introduced(context);
  return openPage(address);
}

async function openPage(address = "#/meals"): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(`${inject("appUrl")}${address}`);
  return page;
}

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const heading = (page: Page, name: string | RegExp) => page.getByRole("heading", { name, exact: true });
const row = (page: Page, dish: string) => page.getByRole("link", { name: dish });
/** One of a few, or several of a few. */
const choose = (page: Page, group: string, option: string) =>
  page.getByRole("group", { name: group }).getByLabel(option, { exact: true }).check();

interface Entry {
  readonly dish: string;
  readonly place?: string;
  readonly when?: string;
}

async function fill(page: Page, { dish, place = "", when }: Entry): Promise<void> {
  await page.getByLabel("Dish", { exact: true }).fill(dish);
  await page.getByLabel("Place", { exact: true }).fill(place);
  if (when !== undefined) await page.getByLabel("When", { exact: true }).fill(when);
}

/** Logs a meal by hand and ends on its page. */
async function log(page: Page, entry: Entry): Promise<void> {
  await button(page, "Add a meal").click();
  await fill(page, entry);
  await button(page, "Save the meal").click();
  await heading(page, entry.dish).waitFor();
}

const toList = (page: Page) => button(page, "All meals").click();

/** Plate, on a phone that has so many meals. */
async function openFilled(count: number): Promise<Page> {
  const page = await openMeals("#/plate");
  await page.getByRole("link", { name: "Meals" }).waitFor();
  await putMeals(page, manyMeals(count));
  await page.reload();
  await button(page, "Use the virtual sniffer").waitFor();
  await page.waitForTimeout(1000); // the nose is read by then
  return page;
}

describe("a meal", () => {
  it("is logged by hand, found under its day, edited, deleted and brought back", async () => {
    const page = await openMeals();
    await heading(page, "No meals yet").waitFor();
    await log(page, { dish: "clear broth", place: "stall 4", when: "2026-11-20T19:30" });
    await page.getByText("20 Nov 2026, 19:30").waitFor();
    await button(page, "Edit").click();
    await page.getByLabel("What was said about it").fill("menu says vegetarian");
    await choose(page, "What became of it", "eaten");
    await button(page, "Save the meal").click();
    await page.getByText("menu says vegetarian").waitFor();
    await toList(page);
    await heading(page, /^Friday,? 20 November 2026$/).waitFor();
    await row(page, "clear broth").click();
    await button(page, "Delete").click();
    await heading(page, "No meals yet").waitFor();
    await button(page, "Undo").click();
    await row(page, "clear broth").click();
    await page.getByText("menu says vegetarian").waitFor();
    const [meal] = await rowsOf<Record<string, unknown>>(page, "meals");
    // 19:30 on the wall in Berlin in November is 18:30 UTC.
    expect(meal).toMatchObject({ at: "2026-11-20T18:30:00.000Z", outcome: "eaten", place: "stall 4" });
  });

  it("is not lost half typed: the form is there again after a reload", async () => {
    const page = await openMeals("#/meals/new");
    await fill(page, { dish: "lotus filling" });
    await page.waitForTimeout(600); // the hand rests
    await page.reload();
    await expect.poll(() => page.getByLabel("Dish", { exact: true }).inputValue()).toBe("lotus filling");
    await button(page, "Cancel").click();
    await heading(page, "No meals yet").waitFor();
    expect(await rowsOf(page, "drafts")).toEqual([]);
  });

  it("gets its truth and its reaction, with the emergency line first and louder when it is urgent", async () => {
    const page = await openMeals();
    await log(page, { dish: "dumplings in broth" });
    await button(page, "Enter what it was").click();
    await choose(page, "Meat", "in it");
    await choose(page, "Egg", "not in it");
    await page.getByLabel("In their words").fill("a little bone stock");
    await button(page, "Save").click();
    await page.getByText("In it: meat").waitFor();
    await page.getByText("Not in it: egg").waitFor();
    await button(page, "Write it down").click();
    const emergency = page.locator(".emergency");
    expect(await emergency.getAttribute("role")).toBe("note");
    await choose(page, "What was it?", "difficulty breathing");
    await page.locator(".emergency[role=alert]").waitFor();
    expect(await emergency.textContent()).toContain("call the local emergency number");
    await choose(page, "How strong was it?", "severe");
    await choose(page, "First sign", "after minutes");
    await button(page, "Save").click();
    await page.getByText("severe, first sign: after minutes").waitFor();
    const [meal] = await rowsOf<Record<string, unknown>>(page, "meals");
    expect(meal).toMatchObject({
      truth: { groups: { meat: "present", egg: "absent" }, source: "kitchen", note: "a little bone stock" },
      reaction: { severity: 3, symptoms: ["breathing"], onsetMs: 600_000 },
    });
  });
});

describe("a check", () => {
  it("leaves its sniff with the finding, and its finding, sniff and cautions with the meal that is saved", async () => {
    const page = await openMeals("#/plate");
    await button(page, "Use the virtual sniffer").click();
    await choose(page, "What was said about it", "menu says vegetarian");
    await button(page, "Check this plate").click();
    await button(page, "Start the countdown").click();
    await button(page, "Save as a meal").waitFor();
    // Kept at once: the raw sweeps do not wait for somebody to save a meal.
    const sniffs = await rowsOf<{ id: string }>(page, "sniffs");
    expect(sniffs).toHaveLength(1);
    await button(page, "Save as a meal").click();
    await heading(page, "New meal").waitFor();
    // A reload ends the check, but not the form that holds its finding.
    await page.getByLabel("Note", { exact: true }).fill("steaming");
    await page.waitForTimeout(600);
    await page.reload();
    await expect.poll(() => page.getByLabel("Note", { exact: true }).inputValue()).toBe("steaming");
    await button(page, "Save the meal").click();
    await heading(page, "The finding as it was shown").waitFor();
    await page.getByText("menu says vegetarian").waitFor();
    await page.getByText("Practice kitchen").waitFor(); // nobody takes it for a real plate
    const [meal] = await rowsOf<{ sniffId: string; noseId: string; finding: { sniffId: string } }>(
      page,
      "meals",
    );
    expect(meal?.sniffId).toBe(sniffs[0]?.id);
    expect(meal?.finding.sniffId).toBe(sniffs[0]?.id);
    expect(meal?.noseId).toMatch(/./);
    await button(page, "Enter what it was").click();
    await choose(page, "Meat", "in it");
    await button(page, "Save").click();
    await button(page, "Keep as a sample for the nose").click();
    await page.getByText("Kept as a sample.").waitFor();
    expect(await demoIds(page, "meals")).toHaveLength(1);
    expect(await demoIds(page, "sniffs")).toEqual([sniffs[0]?.id]);
  });

  it("is over once its finding is saved, and goes on waiting when the form is cancelled", async () => {
    const page = await openMeals("#/plate");
    await button(page, "Use the virtual sniffer").click();
    await button(page, "Check this plate").click();
    await button(page, "Start the countdown").click();
    await button(page, "Save as a meal").click();
    await button(page, "Cancel").click();
    await button(page, "Save as a meal").click();
    await button(page, "Save the meal").click();
    await heading(page, "The finding as it was shown").waitFor();
    await page.getByRole("link", { name: "Plate" }).click();
    await heading(page, "What is on the plate?").waitFor();
    expect(await rowsOf(page, "drafts")).toEqual([]);
    expect(await rowsOf(page, "meals")).toHaveLength(1);
  });
});

describe("a photo", () => {
  it("is scaled, stands upright and has lost its place, its camera and every other tag", async () => {
    const page = await openMeals("#/meals/new");
    await fill(page, { dish: "plum dumplings" });
    const plain = await jpegOf(page, 2400, 1200);
    const tagged = withExif(plain, "Pocket 7");
    const file = { name: "plate.jpg", mimeType: "image/jpeg", buffer: tagged };
    await page.locator("input[type=file]").setInputFiles(file);
    await page.getByRole("img", { name: "Photo 1 of the meal" }).waitFor();
    await button(page, "Save the meal").click();
    await heading(page, "plum dumplings").waitFor();
    const shown = page.getByRole("img", { name: "Photo 1 of the meal" });
    await shown.waitFor();
    await expect.poll(() => shown.evaluate((img: HTMLImageElement) => img.naturalHeight)).toBe(1600);
    const [kept, ...others] = await photoBytes(page);
    if (kept === undefined) throw new Error("no photo was kept");
    expect(others).toEqual([]);
    // What is left of the tags is the colour profile that the browser itself puts in.
    expect(tagsOf(kept)).toEqual(tagsOf(plain));
    expect(tagsOf(tagged)).toEqual(["Exif", ...tagsOf(plain)]);
    for (const trace of ["Exif", "Pocket 7"]) expect(kept.includes(trace, 0, "latin1")).toBe(false);
    // The left half was blue; turned by a quarter, the upper half is.
    const colours = await shown.evaluate((img: HTMLImageElement) => {
      const canvas = document.createElement("canvas");
      canvas.width = img.naturalWidth;
      canvas.height = img.naturalHeight;
      const pen = canvas.getContext("2d");
      pen?.drawImage(img, 0, 0);
      const at = (x: number, y: number) => [...(pen?.getImageData(x, y, 1, 1).data ?? [])].slice(0, 3);
      return { width: canvas.width, above: at(400, 200), below: at(400, 1400) };
    });
    expect(colours.width).toBe(800);
    expect(colours.above[2]).toBeGreaterThan(200);
    expect(colours.below[0]).toBeGreaterThan(200);
    expect(colours.above[0]).toBeLessThan(60);
  });

  it("says when a file is no picture, and a removed one goes from the phone for real", async () => {
    const page = await openMeals("#/meals/new");
    await fill(page, { dish: "leek soup" });
    const input = page.locator("input[type=file]");
    await input.setInputFiles({ name: "a.jpg", mimeType: "image/jpeg", buffer: Buffer.from("no picture") });
    await page.getByText("This file is no picture that this browser can read.").waitFor();
    const buffer = await jpegOf(page, 40, 30);
    await input.setInputFiles({ name: "b.jpg", mimeType: "image/jpeg", buffer });
    await button(page, "Remove photo 1").waitFor();
    await button(page, "Save the meal").click();
    await heading(page, "leek soup").waitFor();
    expect(await photoBytes(page)).toHaveLength(1);
    await button(page, "Edit").click();
    await button(page, "Remove photo 1").click();
    await button(page, "Save the meal").click();
    await heading(page, "leek soup").waitFor();
    await expect.poll(() => photoBytes(page)).toEqual([]);
  });

  it("is told of a full phone, loses nothing, and is saved once there is room", async () => {
    const page = await openMeals("");
    const devtools = await context.newCDPSession(page);
    const { origin } = new URL(inject("appUrl"));
    // Chromium remembers for half a minute how much room there was.
    await devtools.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 12 * 2 ** 20 });
    await page.goto(`${inject("appUrl")}#/meals/new`);
    await fill(page, { dish: "stuffed peppers" });
    const fault = page.getByText("It could not be saved.");
    let photos = 0;
    while ((await fault.count()) === 0 && photos < 12) {
      photos += 1;
      const buffer = await noiseOf(page, 1500);
      await page.locator("input[type=file]").setInputFiles({ name: "c.jpg", mimeType: "image/jpeg", buffer });
      await page.getByRole("img", { name: `Photo ${photos} of the meal` }).waitFor();
      await page.waitForTimeout(500);
    }
    await fault.waitFor();
    await button(page, "Save the meal").click();
    await fault.waitFor();
    expect(await rowsOf(page, "meals")).toEqual([]);
    expect(await page.getByLabel("Dish", { exact: true }).inputValue()).toBe("stuffed peppers");
    expect(await page.getByRole("img", { name: /^Photo/ }).count()).toBe(photos);
    await devtools.send("Storage.overrideQuotaForOrigin", { origin });
    const saved = heading(page, "stuffed peppers");
    for (let wait = 0; wait < 60 && (await saved.count()) === 0; wait += 1) {
      const save = button(page, "Save the meal");
      if ((await save.count()) > 0) await save.click();
      await page.waitForTimeout(1000);
    }
    await saved.waitFor();
    expect(await photoBytes(page)).toHaveLength(photos);
  });
});

describe("many meals", () => {
  it("are searched in every word and filtered by place", async () => {
    const page = await openMeals();
    await log(page, { dish: "clear broth", place: "stall 4" });
    await toList(page);
    await log(page, { dish: "Klößchen", place: "harbour" });
    await toList(page);
    const search = page.getByLabel("Search", { exact: true });
    await search.fill("KLOSS");
    await expect.poll(() => row(page, "clear broth").count()).toBe(0);
    await page.getByText("1 of 2 meals").waitFor();
    expect(await row(page, "Klößchen").count()).toBe(1);
    await search.fill("no such dish");
    await page.getByText("No meal matches.").waitFor();
    await search.fill("");
    await page.getByText("Filter", { exact: true }).click();
    await page.locator("#filter-place").selectOption("stall 4");
    await expect.poll(() => row(page, "Klößchen").count()).toBe(0);
    await button(page, "Clear search and filter").click();
    await row(page, "Klößchen").waitFor();
  });

  it("come up as fast as few do, answer each key press at once, and grow as they are scrolled", async () => {
    const few = await openFilled(50);
    const fewMs = await firstScreenMs(few);
    await few.context().close();
    const page = await openFilled(10_000);
    const manyMs = await firstScreenMs(page);
    expect(manyMs / fewMs).toBeLessThan(4); // all rows would be two hundred times as many
    expect(await page.locator(".meal-row").count()).toBeLessThanOrEqual(113); // two steps of growth at most
    await page.getByLabel("Search", { exact: true }).fill("stall 12");
    await page.getByText(/^[\d,]+ of 10,000 meals$/).waitFor();
    const times = await keyPressesMs(page, ["s", "st", "sta", "stal", "stall", "stall 1", "stall 12"]);
    expect(Math.min(...times)).toBeLessThan(50);
    await page.getByLabel("Search", { exact: true }).fill("");
    const drawn = await page.locator(".meal-row").count();
    for (let turn = 0; turn < 5; turn += 1) {
      await page.mouse.wheel(0, 4000);
      await page.waitForTimeout(100);
    }
    expect(await page.locator(".meal-row").count()).toBeGreaterThan(drawn);
  });

  it("are the same in two tabs, whichever of them writes", async () => {
    const left = await openMeals();
    const right = await openPage();
    await heading(left, "No meals yet").waitFor();
    await heading(right, "No meals yet").waitFor();
    await log(left, { dish: "clear broth" });
    await row(right, "clear broth").click();
    await button(right, "Edit").click();
    await right.getByLabel("Place", { exact: true }).fill("stall 9");
    await button(right, "Save the meal").click();
    await left.getByText("stall 9").waitFor();
    await button(right, "Delete").click();
    await heading(left, "This meal is not here").waitFor();
    await button(right, "Undo").click();
    await heading(left, "clear broth").waitFor();
  });

  it("are there without a network, after a reload, with their photos", async () => {
    const page = await openMeals("#/meals/new");
    await fill(page, { dish: "night market broth" });
    const buffer = await jpegOf(page, 200, 100);
    await page.locator("input[type=file]").setInputFiles({ name: "d.jpg", mimeType: "image/jpeg", buffer });
    await page.getByRole("img", { name: "Photo 1 of the meal" }).waitFor();
    await button(page, "Save the meal").click();
    await heading(page, "night market broth").waitFor();
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    await context.setOffline(true);
    await page.reload();
    await heading(page, "night market broth").waitFor();
    const shown = page.getByRole("img", { name: "Photo 1 of the meal" });
    await expect.poll(() => shown.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(200);
    await toList(page);
    await row(page, "night market broth").waitFor();
    await context.setOffline(false);
  });
});

describe("the review", () => {
  it("goes out as a table, and on paper with every meal of the period", async () => {
    const page = await openMeals();
    await page.addInitScript(() => {
      Object.assign(globalThis, {
        printed: 0,
        print: () => (Reflect.get(globalThis, "printed"), Reflect.set(globalThis, "printed", 1)),
      });
    });
    await page.reload();
    await log(page, { dish: "old broth", when: "2020-02-02T12:00" });
    await toList(page);
    await log(page, { dish: "new broth" });
    await toList(page);
    await button(page, "Review").click();
    const download = page.waitForEvent("download");
    await button(page, "Save the meals as a table (CSV)").click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/^nidor-meals.*\.csv$/);
    const chunks: Buffer[] = [];
    for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer);
    const table = Buffer.concat(chunks).toString("utf8");
    expect(table.split("\r\n")).toHaveLength(4); // header, two meals, the empty end
    expect(table).toContain("old broth");
    await page.locator("#review-period").selectOption({ index: 1 });
    await page.getByText("From 1 meal.").waitFor();
    await button(page, "Print a report").click();
    await page.waitForFunction(() => Reflect.get(globalThis, "printed") === 1);
    expect(await heading(page, "new broth").count()).toBe(1);
    expect(await heading(page, "old broth").count()).toBe(0);
    expect(await page.locator("nav").count()).toBe(0); // no frame on paper
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    await button(page, "Print a report").waitFor();
    await page.locator("#review-period").selectOption("own");
    await page.locator("#review-days-from").fill("2020-02-03");
    await page.locator("#review-days-upto").fill("2020-02-02");
    await button(page, "Show these days").click();
    await page.getByText("The last day comes before the first.").waitFor();
    await page.locator("#review-days-from").fill("2020-02-02");
    await button(page, "Show these days").click();
    await page.waitForURL(/#\/meals\/review\/2020-02-02\/2020-02-02$/);
    await page.getByText("From 1 meal.").waitFor();
    await button(page, "Print a report").click();
    await heading(page, "old broth").waitFor();
    expect(await heading(page, "new broth").count()).toBe(0);
  });
});
