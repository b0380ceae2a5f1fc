// Many meals in a real browser at phone size: search, speed, two tabs, no network.
import { describe, expect, it } from "vitest";
import { firstScreenMs, jpegOf, keyPressesMs } from "./mealsTable.js";
import {
  button,
  fill,
  fillWith,
  heading,
  log,
  openMealsIn,
  row,
  toList,
  useMealsPhones,
} from "./mealsPhone.js";

const openMeals = useMealsPhones();

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
    // All are back once the finger rests; until then the list stands as it did.
    await row(page, "Klößchen").waitFor();
    await page.getByText("2 meals", { exact: true }).waitFor();
    await page.getByText("Filter", { exact: true }).click();
    await page.locator("#filter-place").selectOption("stall 4");
    await expect.poll(() => row(page, "Klößchen").count()).toBe(0);
    await button(page, "Clear search and filter").click();
    await row(page, "Klößchen").waitFor();
  });

  it("come up as fast as few do, answer each key press at once, and grow as they are scrolled", async () => {
    const few = await openMeals("#/plate");
    await fillWith(few, 50);
    const fewMs = await firstScreenMs(few);
    await few.context().close();
    const page = await openMeals("#/plate");
    await fillWith(page, 10_000);
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
    const right = await openMealsIn(left.context());
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
    await page.context().setOffline(true);
    await page.reload();
    await heading(page, "night market broth").waitFor();
    const shown = page.getByRole("img", { name: "Photo 1 of the meal" });
    await expect.poll(() => shown.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(200);
    await toList(page);
    await row(page, "night market broth").waitFor();
    await page.context().setOffline(false);
  });
});
