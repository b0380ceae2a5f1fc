// You in a real browser at phone size: diet and allergies, what they change on Plate, languages, backup out and in,
// a page closed in the middle of an import, deletion for real, and no request that leaves the origin.
import { readFile } from "node:fs/promises";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, inject, it } from "vitest";
import { ALLERGEN_LISTS } from "../../src/diet/data/jurisdictions.js";
import { writeBackup } from "../../src/meals/backup.js";
import type { BackupRecord } from "../../src/meals/backupContents.js";
import { newMeal } from "../../src/meals/meal.js";
import { sha256 } from "../../src/store/sha256.js";
import { launchChromium } from "./emulatedPeripheral.js";
import { introduced } from "./introduced.js";
import { jpegOf, rowsOf } from "./mealsTable.js";

const PHONE = { width: 390, height: 844 };
const PATIENCE_MS = 60_000;
const TABLES = [
  "settings",
  "sniffers",
  "checkJar",
  "noses",
  "noseEvents",
  "sniffs",
  "sniffNotes",
  "drafts",
  "meals",
  "photos",
  "photoBytes",
  "setAside",
];

let browser: Browser;
const contexts: BrowserContext[] = [];
/** Every address that any page or service worker of a test has asked for. */
const asked: string[] = [];

beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(async () => {
  await Promise.all(contexts.splice(0).map((context) => context.close()));
  const origin = new URL(inject("appUrl")).origin;
  const outside = asked
    .splice(0)
    .filter((url) => !/^(blob|data):/.test(url) && new URL(url).origin !== origin);
  expect(outside).toEqual([]);
});

async function freshPhone(options: BrowserContextOptions = {}): Promise<BrowserContext> {
  const context = await browser.newContext({
    viewport: PHONE,
    locale: "en-GB",
    acceptDownloads: true,
    ...options,
  });
  contexts.push(context);
  await introduced(context);
  context.on("request", (request) => asked.push(request.url()));
  return context;
}

async function open(context: BrowserContext, address: string): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.goto(`${inject("appUrl")}${address}`);
  return page;
}

const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole("heading", { name, exact: true });
const visit = (page: Page, address: string) => page.goto(`${inject("appUrl")}${address}`);
/** The settings as they are kept, once they say so: a touch is kept at once, but not in no time. */
const kept = (page: Page) =>
  expect.poll(() => rowsOf<Record<string, unknown>>(page, "settings"), { timeout: PATIENCE_MS });

async function addAllergy(page: Page, id: string, severity: string): Promise<void> {
  await visit(page, "#/you/allergies");
  await button(page, "Add an allergy").click();
  await page.getByLabel("Allergic to").selectOption(id);
  await page.getByRole("radio", { name: severity, exact: true }).check();
  await button(page, "Save").click();
  await page.locator(".allergy").first().waitFor();
}

describe("what the person does not eat", () => {
  it("is kept at once and is there again after a reload: diet, own words, allergy, coeliac disease", async () => {
    const page = await open(await freshPhone(), "#/you");
    await page.getByRole("button", { name: /^Diet and groups/ }).click();
    await page.getByLabel("fish, but no meat").check();
    await page.getByLabel("Words to look for").fill("suet\nlard");
    await button(page, "You").click();
    await addAllergy(page, "egg", "life-threatening");
    await visit(page, "#/you/intolerances");
    await page.getByLabel("I have coeliac disease").check();
    await page.getByRole("checkbox", { name: "lactose", exact: true }).check();
    await kept(page).toContainEqual(
      expect.objectContaining({
        diet: expect.objectContaining({
          diets: ["eatsFishNoMeat"],
          ownWords: ["suet", "lard"],
          allergies: [{ allergen: "egg", severity: "lifeThreatening", note: "" }],
          intolerances: ["lactose"],
          coeliac: true,
        }),
      }),
    );
    await visit(page, "#/you");
    await page.reload();
    const links = page.locator(".links");
    await links.getByText("fish, but no meat").waitFor();
    await links.getByText("egg", { exact: true }).waitFor();
    await links.getByText(/coeliac disease.*lactose/).waitFor();
    await visit(page, "#/you/diet");
    await expect.poll(() => page.getByLabel("Words to look for").inputValue()).toBe("suet\nlard");
  });

  it("changes Plate and the kitchen card: a caution for the dish, the allergen in the kitchen's words", async () => {
    const page = await open(await freshPhone(), "#/plate");
    await page.getByLabel("Dish", { exact: true }).fill("spaghetti carbonara");
    await page.getByText("Say under You what you avoid").waitFor();
    await addAllergy(page, "egg", "life-threatening");
    await visit(page, "#/plate");
    await page.getByText(/contains egg/).waitFor();
    await page.getByText("matters for: allergy to egg").first().waitFor();
    await button(page, "Show the kitchen card").click();
    const card = page.locator(".kitchen-card");
    await card.getByText("eggs and products thereof").waitFor();
    await page.getByLabel("Language of the card").selectOption("fr");
    await card.getByText("J'ai une ALLERGIE alimentaire à : œufs et produits à base d'œufs.").waitFor();
    expect(await card.getAttribute("lang")).toBe("fr");
    await card.getByText("Cette carte est une aide, pas une garantie.").waitFor();
    await page.reload();
    await card.getByText(/œufs/).waitFor();
    await button(page, "Back").click();
    await heading(page, "What is on the plate?").waitFor();
  });

  it("can be taken out again, and brought back by Undo", async () => {
    const page = await open(await freshPhone(), "#/you");
    await addAllergy(page, "egg", "serious");
    await page.locator(".allergy").click();
    await button(page, "Remove").click();
    await page.getByText("None entered.").waitFor();
    await button(page, "Undo").click();
    await page.locator(".allergy").getByText("serious").waitFor();
    await page.reload();
    await page.locator(".allergy").getByText("egg", { exact: true }).waitFor();
  });

  it("reaches the other tab, which then warns too", async () => {
    const context = await freshPhone();
    const other = await open(context, "#/plate");
    await other.getByLabel("Dish", { exact: true }).fill("spaghetti carbonara");
    await other.getByText("Say under You what you avoid").waitFor();
    const page = await open(context, "#/you");
    await addAllergy(page, "egg", "serious");
    await other.getByText(/contains egg/).waitFor();
  });

  it("is not shown as kept when the phone refused it", async () => {
    const context = await freshPhone();
    const page = await open(context, "#/you/diet");
    const vegan = page.getByLabel("vegan", { exact: true });
    await vegan.waitFor();
    await page.evaluate(
      () => new Promise((settle) => (indexedDB.deleteDatabase("nidor").onsuccess = settle)),
    );
    await vegan.click();
    await page.getByText(/^Not kept\./).waitFor();
    await expect.poll(() => vegan.isChecked()).toBe(false);
  });

  it("is told as lost on Plate, strongly and in front, until it is entered again", async () => {
    const page = await open(await freshPhone(), "#/you/diet");
    await page.getByLabel("vegan", { exact: true }).check();
    await kept(page).toContainEqual(expect.objectContaining({ diet: expect.anything() }));
    await page.evaluate(
      () =>
        new Promise((settle) => {
          const request = indexedDB.open("nidor");
          request.onsuccess = () => {
            const work = request.result.transaction("settings", "readwrite");
            const value = { diet: { allergies: "egg" }, changedAt: "2026-11-25T19:00:00.000Z" };
            work.objectStore("settings").put({ id: "settings", bucket: "all", atMs: 0, demo: 0, value });
            work.oncomplete = () => {
              request.result.close();
              settle(undefined);
            };
          };
        }),
    );
    await visit(page, "#/plate");
    await page.reload();
    const lost = page.locator(".notice--strong", { hasText: "could not be read" });
    await lost.waitFor();
    await visit(page, "#/you/settings");
    await page.getByRole("radio", { name: "dark" }).check();
    await expect.poll(() => page.locator("html").getAttribute("data-theme")).toBe("dark");
    await visit(page, "#/plate");
    await page.reload();
    await lost.waitFor();
    await visit(page, "#/you/diet");
    await page.getByLabel("vegan", { exact: true }).check();
    await visit(page, "#/plate");
    await heading(page, "What is on the plate?").waitFor();
    await lost.waitFor({ state: "detached" });
  });
});

describe("how the app looks and speaks", () => {
  it("switches its words to German and back, and keeps that", async () => {
    const page = await open(await freshPhone(), "#/you/settings");
    const place = (name: string) => page.getByRole("navigation").getByText(name, { exact: true });
    await place("Plate").waitFor();
    await page.getByRole("radio", { name: "Deutsch" }).check();
    await place("Teller").waitFor();
    expect(await page.locator("html").getAttribute("lang")).toBe("de");
    await page.reload();
    await place("Mahlzeiten").waitFor();
    await page.getByRole("radio", { name: "English" }).check();
    await place("Meals").waitFor();
  });

  it("speaks German at once on a phone that prefers it", async () => {
    const page = await open(await freshPhone({ locale: "de-AT" }), "#/plate");
    await page.getByRole("navigation").getByText("Teller", { exact: true }).waitFor();
  });

  it("names the legal list in force and its date", async () => {
    const page = await open(await freshPhone(), "#/you/settings");
    await page.getByLabel("Legal allergen list").selectOption("JP");
    const { instrument, date } = ALLERGEN_LISTS.JP;
    await page.getByText(`${instrument}, ${date}`).waitFor();
    await kept(page).toContainEqual(
      expect.objectContaining({ diet: expect.objectContaining({ jurisdiction: "JP" }) }),
    );
  });

  it("says in every place that nothing can be kept where the browser has no storage", async () => {
    const context = await freshPhone();
    await context.addInitScript(() => Object.defineProperty(window, "indexedDB", { value: undefined }));
    const page = await open(context, "#/plate");
    for (const place of ["plate", "meals", "nose", "you"]) {
      await visit(page, `#/${place}`);
      await page.locator(".notice--strong", { hasText: "when this page closes, all is gone" }).waitFor();
    }
  });
});

describe("the data", () => {
  it("stay where they are until the person asks: persistence is never asked for without a tap", async () => {
    const context = await freshPhone();
    await context.addInitScript(() => {
      const counted = window as unknown as { asked: number };
      counted.asked = 0;
      navigator.storage.persist = () => Promise.resolve((counted.asked += 1) > 0);
    });
    const page = await open(context, "#/you");
    const times = () => page.evaluate(() => (window as unknown as { asked: number }).asked);
    await visit(page, "#/you/data");
    await button(page, "Ask the browser to keep it").waitFor();
    expect(await times()).toBe(0);
    await button(page, "Ask the browser to keep it").click();
    await expect.poll(times).toBe(1);
  });

  it("never leave the phone: no page of the app asks another origin for anything", async () => {
    const page = await open(await freshPhone(), "#/plate");
    await addAllergy(page, "egg", "serious");
    const pages = ["diet", "allergies", "intolerances", "missRate", "settings", "card", "data", "install"];
    for (const name of [...pages, "about", "glossary"]) {
      await visit(page, `#/you/${name}`);
      await page.locator("h1").first().waitFor();
    }
    for (const place of ["#/plate/card", "#/meals", "#/meals/review", "#/nose", "#/nose/samples"]) {
      await visit(page, place);
      await page.locator("h1").first().waitFor();
    }
    // What was asked is held against the origin after each test.
    expect(asked.length).toBeGreaterThan(10);
  });
});

/** Saves a backup on the data page, and gives its bytes. */
async function backUp(page: Page): Promise<Buffer> {
  await visit(page, "#/you/data");
  const [file] = await Promise.all([page.waitForEvent("download"), button(page, "Save a backup").click()]);
  return readFile(await file.path());
}

async function chooseBackup(page: Page, bytes: Buffer): Promise<void> {
  await visit(page, "#/you/data");
  const input = page.locator("input[type=file]");
  await input.setInputFiles({ name: "backup.txt", mimeType: "text/plain", buffer: bytes });
}

/** On a fresh phone that means the demo nose. */
async function dropDemo(page: Page): Promise<void> {
  await visit(page, "#/you/data");
  await button(page, "Remove the demo data").click();
  await button(page, "Remove the demo data").waitFor({ state: "detached" });
}

describe("a backup", () => {
  it("brings everything to a clean phone, photo too, and goes out again byte by byte the same", async () => {
    const at = new Date("2026-11-25T19:00:00Z");
    const [first, second] = [await freshPhone(), await freshPhone()];
    await first.clock.setFixedTime(at);
    await second.clock.setFixedTime(at);
    const page = await open(first, "#/you");
    await addAllergy(page, "egg", "life-threatening");
    await visit(page, "#/meals/new");
    await page.getByLabel("Dish", { exact: true }).fill("lotus filling");
    const photo = { name: "photo.jpg", mimeType: "image/jpeg", buffer: await jpegOf(page, 640, 480) };
    await page.locator("input[type=file]").first().setInputFiles(photo);
    await page.locator("img.photo").waitFor();
    await button(page, "Save the meal").click();
    await heading(page, "lotus filling").waitFor();
    await dropDemo(page);
    const bytes = await backUp(page);
    expect(bytes.toString()).toContain('"table":"photos"');

    const other = await open(second, "#/you");
    await dropDemo(other);
    await chooseBackup(other, bytes);
    await heading(other, "What this backup would do").waitFor();
    // The settings differ: here the demo data was taken away by hand, which is a choice of its own.
    await other.getByRole("group", { name: "Settings" }).getByLabel("take the file’s").check();
    await button(other, "Bring it in").click();
    await heading(other, "Your data").waitFor();
    expect((await backUp(other)).equals(bytes)).toBe(true);
    await visit(other, "#/plate");
    await other.getByLabel("Dish", { exact: true }).fill("spaghetti carbonara");
    await other.getByText(/contains egg/).waitFor();
    await chooseBackup(other, bytes);
    await other.getByText("Everything in it is here already.").waitFor();
  });

  it("is refused when it was changed on the way, and nothing is touched", async () => {
    const page = await open(await freshPhone(), "#/you");
    const bytes = Buffer.from(await backupOf(3, 0));
    await chooseBackup(page, Buffer.from(bytes.toString().replace("noodles 1", "noodles 9")));
    await page.getByText(/cut short or changed/).waitFor();
    expect(await rowsOf(page, "meals")).toEqual([]);
  });

  it("loses nothing and leaves nothing half when the page is closed in the middle of bringing it in", async () => {
    const [meals, photos] = [3000, 12];
    const bytes = Buffer.from(await backupOf(meals, photos));
    const context = await freshPhone();
    let page = await open(context, "#/meals/new");
    await page.getByLabel("Dish", { exact: true }).fill("my own broth");
    await button(page, "Save the meal").click();
    await heading(page, "my own broth").waitFor();
    let torn = 0;
    for (const waitMs of [0, 40, 120, 300, 700]) {
      await chooseBackup(page, bytes);
      await button(page, "Bring it in").click();
      await page.waitForTimeout(waitMs);
      await page.close();
      page = await open(context, "#/meals");
      const dishes = (await rowsOf<{ dish: string }>(page, "meals")).map(({ dish }) => dish);
      expect(dishes).toContain("my own broth");
      expect([1, 1 + meals]).toContain(dishes.length);
      const isWhole = dishes.length > 1;
      expect(await rowsOf(page, "photos")).toHaveLength(isWhole ? photos : 0);
      expect(await rowsOf(page, "photoBytes")).toHaveLength(isWhole ? photos : 0);
      if (isWhole) break;
      torn += 1;
    }
    expect(torn).toBeGreaterThan(0);
    await chooseBackup(page, bytes);
    await page
      .getByText(/records are new|Everything in it/)
      .first()
      .waitFor();
    const isAllThere = (await page.getByText(/Everything in it/).count()) > 0;
    if (isAllThere) expect(await button(page, "Bring it in").getAttribute("aria-disabled")).toBe("true");
    else {
      await button(page, "Bring it in").click();
      await heading(page, "Your data").waitFor();
    }
    expect(await rowsOf(page, "meals")).toHaveLength(1 + meals);
    expect(await rowsOf(page, "photoBytes")).toHaveLength(photos);
  });
});

/** A sound backup of so many meals and photos. */
async function backupOf(meals: number, photos: number): Promise<string> {
  const at = "2026-11-20T18:00:00.000Z";
  const text = await writeBackup(
    {
      writtenAt: at,
      records: [
        ...Array.from({ length: meals }, (_, i): BackupRecord => {
          const value = { ...newMeal(`meal-${i}`, at), dish: `noodles ${i}` };
          return { table: "meals", id: value.id, demo: false, changedAt: at, value: { ...value } };
        }),
        ...Array.from({ length: photos }, (_, i): BackupRecord => {
          const bytes = new Uint8Array(200_000).fill(i);
          const value = { id: `photo-${i}`, mime: "image/jpeg", addedAt: at, sizeBytes: bytes.length };
          return { table: "photos", id: value.id, demo: false, changedAt: null, value, bytes };
        }),
      ],
    },
    sha256,
  );
  if (!text.ok) throw new Error(text.error.kind);
  return text.value;
}

describe("deleting everything", () => {
  it("asks twice, leaves an empty database, and starts as on a fresh phone", async () => {
    const context = await freshPhone({ serviceWorkers: "block" });
    // Without its file the demo nose is not put in place, so that whatever is kept was left behind.
    await context.route("**/models/**", (route) => route.abort());
    const page = await open(context, "#/you");
    await addAllergy(page, "egg", "serious");
    await chooseBackup(page, Buffer.from(await backupOf(20, 2)));
    await button(page, "Bring it in").click();
    await heading(page, "Your data").waitFor();
    await backUp(page);
    await button(page, "Delete everything").click();
    const now = button(page, "Delete it all");
    await now.click({ force: true });
    expect(await rowsOf(page, "meals")).toHaveLength(20);
    await page.getByLabel("I have a backup, or want none").check();
    await now.click();
    await heading(page, "What is on the plate?").waitFor();
    for (const table of TABLES) expect([table, await rowsOf(page, table)]).toEqual([table, []]);
    expect(await page.evaluate(() => localStorage.getItem("nidor-last-backup"))).toBeNull();
    await page.reload();
    await visit(page, "#/you");
    await page.getByText("nothing entered").first().waitFor();
    for (const table of TABLES) expect([table, await rowsOf(page, table)]).toEqual([table, []]);
  });
});
