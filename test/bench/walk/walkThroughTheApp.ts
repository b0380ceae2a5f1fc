import type { Page } from "playwright-core";
import { createThumb } from "./thumb.js";
import { walkData } from "./walkData.js";
import { walkFirstRun } from "./walkFirstRun.js";
import { walkMeals } from "./walkMeals.js";
import { walkNose } from "./walkNose.js";
import { walkPlate } from "./walkPlate.js";
import { walkRefresh } from "./walkRefresh.js";
import { walkYou } from "./walkYou.js";

/**
 * A walk through every place and the heavy actions, tap by tap, as a thumb would.
 *
 * @param page - at the first page of the first run
 * @param measured - called after each step with its name, when the page has come to rest
 */
export async function walkThroughTheApp(
  page: Page,
  measured: (step: string) => Promise<void>,
): Promise<void> {
  const thumb = createThumb(page, measured);
  await walkFirstRun(thumb);
  await walkYou(thumb);
  await walkPlate(thumb);
  await walkMeals(thumb);
  await walkNose(thumb);
  await walkRefresh(thumb);
  await walkData(thumb);
}
