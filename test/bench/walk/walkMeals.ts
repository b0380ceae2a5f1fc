import { button, type Thumb } from "./thumb.js";

/** Through a long list, faster than anybody reads. */
const FLICKS = 30;
const FLICK_PX = 700;
const FLICK_MS = 80;

/** The list of all meals, its search and filters, one meal's form, and the review. */
export async function walkMeals(thumb: Thumb): Promise<void> {
  const { page, step, tap } = thumb;
  await thumb.toPlace("Meals");
  await page.locator(".meal-row").first().waitFor();
  await page.waitForTimeout(4000);
  await step("search in meals", () =>
    page.locator("#meal-search").pressSequentially("plum soup", { delay: 150 }),
  );
  await step("clear the search", async () => {
    for (const key of ["ControlOrMeta+a", "Backspace"]) await page.locator("#meal-search").press(key);
  });
  await step("open the filters", () => page.locator("main details summary").first().tap());
  await step("filter by verdict", () => page.locator("#filter-verdict").press("ArrowDown"));
  await step("let every verdict through", () => page.locator("#filter-verdict").press("ArrowUp"));
  await step("scroll far", async () => {
    for (let flick = 0; flick < FLICKS; flick += 1) {
      await page.mouse.wheel(0, FLICK_PX);
      await page.waitForTimeout(FLICK_MS);
    }
  });
  await thumb.toPlace("Plate", "away from far down");
  await thumb.toPlace("Meals", "back among all meals");
  await step("open a meal", () => page.locator(".meal-row").first().tap());
  await tap("Edit");
  await step("type a note", () =>
    page.getByLabel("Note", { exact: true }).pressSequentially("warm", { delay: 150 }),
  );
  await tap("Cancel");
  await tap("All meals");
  await walkReview(thumb);
}

async function walkReview({ page, step, tap }: Thumb): Promise<void> {
  await tap("Review");
  await step("another period", () => page.locator("#review-period").press("ArrowDown"));
  await step("days of one's own", () => page.locator("#review-period").press("End"));
  await step("show these days", () => button(page, "Show these days").tap());
  await step("back from the review", () => page.locator("main .back").tap());
}
