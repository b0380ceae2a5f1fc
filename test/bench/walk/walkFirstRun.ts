import type { Thumb } from "./thumb.js";

/** Through the pages that a newcomer meets, by way of the diet. */
export async function walkFirstRun({ page, step, tap }: Thumb): Promise<void> {
  await page.getByText("1 of 4").waitFor();
  await step("first run: next", () => page.getByRole("button", { name: "Next" }).tap());
  await step("first run: what it cannot", () => page.getByRole("button", { name: "Next" }).tap());
  await tap("Next");
  await tap("Skip");
}
