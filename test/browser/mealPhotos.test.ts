// Photos of meals in a real browser at phone size: scaled, without their tags, on a full phone.
import { describe, expect, inject, it } from "vitest";
import { jpegOf, noiseOf, photoBytes, rowsOf, tagsOf, withExif } from "./mealsTable.js";
import { button, fill, heading, useMealsPhones } from "./mealsPhone.js";

const openMeals = useMealsPhones();

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
    const devtools = await page.context().newCDPSession(page);
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
