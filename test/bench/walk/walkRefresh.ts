import { readFileSync } from "node:fs";
import { demoSamples } from "../../../src/virtual/demoSamples.js";
import { asFile } from "../../browser/asFile.js";
import { button, type Thumb } from "./thumb.js";

const DEMO_NOSE = new URL("../../../models/demo.nose.json", import.meta.url);
const YEAR_OLD = { id: "year-old", name: "A year old", taughtAt: "2025-06-01T00:00:00Z" };

/** A nose from a file is taken into use; it is old, and fresh samples bring it up to date until that is stopped. */
export async function walkRefresh(thumb: Thumb): Promise<void> {
  const { page, step, tap, open, back, toPlace } = thumb;
  await toPlace("Nose", "Nose again");
  await open("Versions and files", "Versions with a file");
  await step("a nose from a file", async () => {
    await page.getByLabel("Bring in a nose file").setInputFiles(oldNose());
    await button(page, "Use this nose").waitFor();
  });
  await tap("Use this nose");
  await page.getByRole("heading", { name: YEAR_OLD.name }).waitFor();
  await open("Versions and files", "Versions with samples");
  await step("samples from a file", async () => {
    await page.getByLabel("Bring in samples (sniff file)").setInputFiles(freshSamples());
    await page.getByText("10 samples came in.").waitFor();
  });
  await back("Versions with samples");
  await open("Bring it up to date");
  await tap("Bring it up to date");
  await page.getByRole("progressbar").waitFor();
  await tap("Stop teaching");
  await button(page, "Bring it up to date").waitFor();
  await back("Refresh after it was stopped");
}

function oldNose() {
  const nose = { ...(JSON.parse(readFileSync(DEMO_NOSE, "utf8")) as object), ...YEAR_OLD };
  return asFile("year-old.json", JSON.stringify(nose));
}

function freshSamples() {
  const sniffs = demoSamples({ plates: 10, seed: 5, laterDays: 200 });
  return asFile("fresh.jsonl", sniffs.map((sniff) => `${JSON.stringify(sniff)}\n`).join(""));
}
