import { button, type Thumb } from "./thumb.js";

/** Two checks of practice plates: one is kept as a sample, the other as a meal. */
export async function walkPlate(thumb: Thumb): Promise<void> {
  const { page, touch, tap } = thumb;
  await walkCheck(thumb);
  await tap("Keep as a sample");
  await touch("say one thing of the sample", page.getByLabel("in it", { exact: true }).first());
  await tap("Keep it");
  await thumb.toPlace("Plate", "Plate for the second time");
  await tap("Done");
  await checkPlate(thumb);
  await walkSaving(thumb);
  await walkAfterwards(thumb);
}

/** A check of a practice plate from the dish's name to the details of its finding. */
async function walkCheck(thumb: Thumb): Promise<void> {
  const { page, touch, type, tap } = thumb;
  await thumb.toPlace("Plate");
  await type("type a dish", page.locator("#dish"), "carbona");
  await touch("take a suggestion", page.locator(".suggestions button").first());
  await touch("choose a claim", page.getByLabel("menu says vegetarian"));
  await tap("Use the virtual sniffer");
  await checkPlate(thumb);
  await touch("details of a finding", page.locator("main details summary").first());
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
async function walkAfterwards({ page, touch, tap }: Thumb): Promise<void> {
  await tap("Enter what it was");
  await touch("say one thing of it", page.getByLabel("in it", { exact: true }).first());
  await touch("save the truth", button(page, "Save"));
  await tap("Write it down");
  await touch("say how it felt", page.getByLabel("hives or itching skin"));
  await touch("save the reaction", button(page, "Save"));
  await tap("Keep as a sample for the nose");
}
