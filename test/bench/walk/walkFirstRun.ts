import type { Thumb } from "./thumb.js";

/** Through the pages that a newcomer meets, by way of the diet. */
export async function walkFirstRun({ page, touch, tap }: Thumb): Promise<void> {
  await page.getByText("1 of 4").waitFor();
  await touch("first run: next", page.getByRole("button", { name: "Next" }));
  await touch("first run: what it cannot", page.getByRole("button", { name: "Next" }));
  await tap("Next");
  await tap("Skip");
}
