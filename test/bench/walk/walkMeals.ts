import { button, type Thumb } from "./thumb.js";

/** Through a long list, faster than anybody reads. */
const FLICKS = 30;
const FLICK_PX = 700;
const FLICK_MS = 80;

/** The list of all meals, its search and filters, one meal's form, and the review. */
export async function walkMeals(thumb: Thumb): Promise<void> {
  const { page, step, touch, type, press, tap } = thumb;
  await thumb.toPlace("Meals");
  await page.locator(".meal-row").first().waitFor();
  await page.waitForTimeout(4000);
  await type("search in meals", page.locator("#meal-search"), "plum soup");
  await press("clear the search", page.locator("#meal-search"), "ControlOrMeta+a", "Backspace");
  await touch("open the filters", page.locator("main details summary").first());
  await press("filter by verdict", page.locator("#filter-verdict"), "ArrowDown");
  await press("let every verdict through", page.locator("#filter-verdict"), "ArrowUp");
  await step("scroll far", async () => {
    for (let flick = 0; flick < FLICKS; flick += 1) {
      await page.mouse.wheel(0, FLICK_PX);
      await page.waitForTimeout(FLICK_MS);
    }
  });
  await thumb.toPlace("Plate", "away from far down");
  await thumb.toPlace("Meals", "back among all meals");
  await touch("open a meal", page.locator(".meal-row").first());
  await tap("Edit");
  await type("type a note", page.getByLabel("Note", { exact: true }), "warm");
  await tap("Cancel");
  await tap("All meals");
  await walkReview(thumb);
}

async function walkReview({ page, touch, press, tap }: Thumb): Promise<void> {
  await tap("Review");
  await press("another period", page.locator("#review-period"), "ArrowDown");
  await press("days of one's own", page.locator("#review-period"), "End");
  await touch("show these days", button(page, "Show these days"));
  await touch("back from the review", page.locator("main .back"));
}
