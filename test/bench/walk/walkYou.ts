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
  const { page, touch, type, press, tap, visit, open, back } = thumb;
  await thumb.toPlace("You");
  for (const name of PAGES) await visit(name);
  await open("Diet and groups");
  await touch("choose a diet", page.getByLabel("vegan", { exact: true }));
  await back("Diet");
  await open("Allergies");
  await tap("Add an allergy");
  await press("choose an allergen", page.getByLabel("Allergic to"), "ArrowDown");
  await touch("how serious", page.getByLabel("serious", { exact: true }));
  await type("note for helpers", page.getByLabel("Note for helpers"), "pen");
  await touch("save the allergy", page.getByRole("button", { name: "Save", exact: true }));
  await back("Allergies");
  await open("Settings");
  await touch("to German", page.getByLabel("Deutsch", { exact: true }));
  await touch("to English", page.getByLabel("English", { exact: true }));
  await touch("to dark", page.getByLabel("dark", { exact: true }));
  await back("Settings");
  await visit("Your data");
}
