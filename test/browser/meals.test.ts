// Meals in a real browser at phone size: log, edit, delete, truth, reaction, what a check leaves, the review.
import { describe, expect, it } from "vitest";
import { demoIds, rowsOf } from "./mealsTable.js";
import { button, choose, fill, heading, log, row, toList, useMealsPhones } from "./mealsPhone.js";

const openMeals = useMealsPhones();

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
