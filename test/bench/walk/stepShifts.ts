import type { Page } from "playwright-core";
import { takeShifts } from "../../browser/layoutShifts.js";

/** What comes from a file answers the browser's own chooser: no input on the page tells that somebody asked for it. */
const FROM_FILES: readonly string[] = ["a nose from a file", "samples from a file"];

/** What moved by itself in a step of the walk that has just been taken, each named after it. */
export async function stepShifts(page: Page, step: string): Promise<string[]> {
  const shifts = await takeShifts(page);
  return FROM_FILES.includes(step) ? [] : shifts.map((shift) => `${step}: ${shift}`);
}
