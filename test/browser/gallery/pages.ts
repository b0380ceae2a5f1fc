import { MEAL_PAGES } from "./mealPages.js";
import { NOSE_PAGES } from "./nosePages.js";
import type { Page } from "./page.js";
import { PLATE_PAGES } from "./platePages.js";
import { YOU_PAGES } from "./youPages.js";

/** Every screen in every state, by name. */
export const PAGES: Readonly<Record<string, Page>> = {
  ...PLATE_PAGES,
  ...MEAL_PAGES,
  ...NOSE_PAGES,
  ...YOU_PAGES,
};
