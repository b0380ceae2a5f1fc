// What a newcomer meets: four pages that can be left at each step, and a plate checked within a minute of opening.
import type { Page } from "playwright-core";
import { describe, expect, inject, it } from "vitest";
import { usePhones } from "./usePhones.js";

const newContext = usePhones();

async function freshPhone(): Promise<Page> {
  const context = await newContext();
  const page = await context.newPage();
  page.setDefaultTimeout(90_000);
  await page.goto(inject("appUrl"));
  return page;
}
const button = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

describe("the first run", () => {
  it("goes on where it was left, after a reload", async () => {
    const page = await freshPhone();
    await page.getByText("1 of 4").waitFor();
    await button(page, "Next").click();
    await page.getByText("2 of 4").waitFor();
    await page.reload();
    await page.getByText("2 of 4").waitFor();
  });

  it("can be skipped, and does not come again", async () => {
    const page = await freshPhone();
    await button(page, "Skip").click();
    await button(page, "Check this plate").waitFor();
    await page.reload();
    await button(page, "Check this plate").waitFor();
    expect(await page.getByText("1 of 4").count()).toBe(0);
  });

  it("leads from the first page to a finding with the virtual sniffer", async () => {
    const page = await freshPhone();
    for (const step of ["1 of 4", "2 of 4", "3 of 4"]) {
      await page.getByText(step).waitFor();
      await button(page, "Next").click();
    }
    await page.getByText("4 of 4").waitFor();
    await page.getByRole("button", { name: /virtual sniffer/i }).click();
    await page.locator("[aria-disabled=true]").getByText("Check this plate").waitFor({ state: "detached" });
    await button(page, "Check this plate").click();
    await button(page, "Start the countdown").click();
    await page.locator("article[data-group] .finding__verdict").first().waitFor();
    const verdicts = await page.locator("article[data-group] .finding__verdict").allTextContents();
    expect(verdicts.length).toBeGreaterThanOrEqual(4);
    for (const verdict of verdicts) expect(verdict.trim()).toMatch(/^(Smelled|Not smelled|Uncertain)$/);
    await page.getByText(/practice kitchen served/i).waitFor();
  });
});
