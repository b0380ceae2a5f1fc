import type { Thumb } from "./thumb.js";

const PAGES = [
  "Intolerances and coeliac disease",
  "Accepted miss rate",
  "Kitchen card",
  "Put it on your phone",
  "About and limits",
  "Words explained",
];

/** Diet, an allergy, settings and every page of You. */
export async function walkYou(thumb: Thumb): Promise<void> {
  const { page, step, tap, visit, open, back } = thumb;
  await thumb.toPlace("You");
  for (const name of PAGES) await visit(name);
  await open("Diet and groups");
  await step("choose a diet", () => page.getByLabel("vegan", { exact: true }).tap());
  await back("Diet");
  await open("Allergies");
  await tap("Add an allergy");
  await step("choose an allergen", () => page.getByLabel("Allergic to").press("ArrowDown"));
  await step("how serious", () => page.getByLabel("serious", { exact: true }).tap());
  await step("note for helpers", () =>
    page.getByLabel("Note for helpers").pressSequentially("pen", { delay: 150 }),
  );
  await step("save the allergy", () => page.getByRole("button", { name: "Save", exact: true }).tap());
  await back("Allergies");
  await open("Settings");
  await step("to German", () => page.getByLabel("Deutsch", { exact: true }).tap());
  await step("to English", () => page.getByLabel("English", { exact: true }).tap());
  await step("to dark", () => page.getByLabel("dark", { exact: true }).tap());
  await back("Settings");
  await visit("Your data");
}
