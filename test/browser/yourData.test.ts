// The data on the phone, in a real browser at phone size: no request that leaves the origin, backup out and in, a page
// closed in the middle of an import, deletion for real.
import { readFile } from "node:fs/promises";
import { type Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { writeBackup } from "../../src/meals/backup.js";
import { type BackupRecord } from "../../src/meals/backupContents.js";
import { newMeal } from "../../src/meals/meal.js";
import { sha256 } from "../../src/store/sha256.js";
import { jpegOf, rowsOf } from "./mealsTable.js";
import { addAllergy, button, heading, open, useYouPhones, visit } from "./youPhones.js";

const { asked, freshPhone } = useYouPhones();

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
    for (const close of [
      ...[1, meals / 2, meals].map(closeHeldAfter),
      ...[0, 40, 120, 300, 700].map(closeAfter),
    ]) {
      await chooseBackup(page, bytes);
      await close(page);
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
    expect(torn).toBeGreaterThanOrEqual(3);
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

/** Brings the backup in, and closes the page so long after the tap: a quick browser may be through by then. */
const closeAfter = (waitMs: number) => async (page: Page) => {
  await button(page, "Bring it in").click();
  await page.waitForTimeout(waitMs);
  await page.close();
};

/** Brings the backup in, and closes the page while the write is held open after so many rows. */
const closeHeldAfter = (puts: number) => async (page: Page) => {
  await page.evaluate((puts) => {
    const held = window as unknown as { isHeld: boolean };
    const native = IDBObjectStore.prototype.put;
    let count = 0;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...row: Parameters<typeof native>) {
      const request = native.apply(this, row);
      // A transaction that is asked without end does not end.
      const ask = () => void (this.count().onsuccess = ask);
      if ((count += 1) === puts) request.addEventListener("success", () => ((held.isHeld = true), ask()));
      return request;
    };
  }, puts);
  await button(page, "Bring it in").click();
  await page.waitForFunction(() => (window as unknown as { isHeld?: boolean }).isHeld === true);
  await page.close();
};

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
