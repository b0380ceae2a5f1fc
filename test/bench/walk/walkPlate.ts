import { button, type Thumb } from "./thumb.js";

/** Two checks of practice plates: one is kept as a sample, the other as a meal. */
export async function walkPlate(thumb: Thumb): Promise<void> {
  const { page, step, tap } = thumb;
  await walkCheck(thumb);
  await tap("Keep as a sample");
  await step("say one thing of the sample", () => page.getByLabel("in it", { exact: true }).first().tap());
  await tap("Keep it");
  await thumb.toPlace("Plate", "Plate for the second time");
  await tap("Done");
  await checkPlate(thumb);
  await walkSaving(thumb);
  await walkAfterwards(thumb);
}

/** A check of a practice plate from the dish's name to the details of its finding. */
async function walkCheck(thumb: Thumb): Promise<void> {
  const { page, step, tap } = thumb;
  await thumb.toPlace("Plate");
  await step("type a dish", () => page.locator("#dish").pressSequentially("carbona", { delay: 150 }));
  await step("take a suggestion", () => page.locator(".suggestions button").first().tap());
  await step("choose a claim", () => page.getByLabel("menu says vegetarian").tap());
  await tap("Use the virtual sniffer");
  await checkPlate(thumb);
  await step("details of a finding", () => page.locator("main details summary").first().tap());
}

/** A finding becomes a meal. */
async function walkSaving({ tap }: Thumb): Promise<void> {
  await tap("Save as a meal");
  await tap("Save the meal");
}

/** One check with the sniffer at hand. */
async function checkPlate({ page, tap }: Thumb): Promise<void> {
  await page.locator("[aria-disabled=true]").getByText("Check this plate").waitFor({ state: "detached" });
  await tap("Check this plate");
  await button(page, "Start the countdown").waitFor();
  await tap("Start the countdown");
  await button(page, "Save as a meal").waitFor();
}

/** What the kitchen said later, and how the eater felt. */
async function walkAfterwards({ page, step, tap }: Thumb): Promise<void> {
  await tap("Enter what it was");
  await step("say one thing of it", () => page.getByLabel("in it", { exact: true }).first().tap());
  await step("save the truth", () => button(page, "Save").tap());
  await tap("Write it down");
  await step("say how it felt", () => page.getByLabel("hives or itching skin").tap());
  await step("save the reaction", () => button(page, "Save").tap());
  await tap("Keep as a sample for the nose");
}
