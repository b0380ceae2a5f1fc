import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { button, type Thumb } from "./thumb.js";

/** Ten thousand meals, on a processor slowed four times. */
const SLOW_READING_MS = 90_000;

/** Everything on the phone goes into a backup; the diet is changed, and the backup put over it. */
export async function walkData(thumb: Thumb): Promise<void> {
  const { page, step, touch, tap, open, back, toPlace } = thumb;
  await toPlace("You", "You again");
  await open("Your data", "Your data again");
  const saved = page.waitForEvent("download");
  await tap("Save a backup");
  const folder = mkdtempSync(join(tmpdir(), "nidor-walk-"));
  const backup = join(folder, "backup.nidor");
  await (await saved).saveAs(backup);
  await back("Your data again");
  await open("Diet and groups", "Diet again");
  await touch("another diet", page.getByLabel("vegetarian: egg and dairy", { exact: true }));
  await back("Diet again");
  await open("Your data", "Your data with a backup");
  await step("what a backup would do", async () => {
    await page.locator("input[type=file]").setInputFiles(backup);
    await button(page, "Bring it in").waitFor({ timeout: SLOW_READING_MS });
  });
  await touch("take the file’s", page.getByLabel("take the file’s").first());
  await tap("Bring it in");
  await page.getByRole("heading", { name: "Your data" }).waitFor();
  rmSync(folder, { recursive: true });
}
