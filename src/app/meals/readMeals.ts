import { ok, type Result } from "../../kernel/result.js";
import type { Meal } from "../../meals/meal.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import type { MealQuery, PageCursor } from "../../store/storeTypes.js";
import { untilIdle } from "../untilIdle.js";

/** Fills a screen, and is read within a frame or two of a slow phone: a tap waits for no more. */
export const MEALS_PAGE = 50;

/**
 * Reads meals page by page, newest first, when the page has nothing else to do.
 *
 * @param onPage - gets each page as it comes; false ends the reading
 * @param turn - waited for before each further page
 */
export async function readMealPages(
  store: Pick<Store, "listMeals">,
  query: Pick<MealQuery, "fromAt" | "beforeAt">,
  onPage: (meals: readonly Meal[], isLast: boolean) => boolean,
  turn = untilIdle,
): Promise<Result<void, StoreError>> {
  let after: PageCursor | null = null;
  for (;;) {
    const page = await store.listMeals({ ...query, limit: MEALS_PAGE, ...(after === null ? {} : { after }) });
    if (!page.ok) return page;
    const { items, next } = page.value;
    if (!onPage(items, next === null) || next === null) return ok(undefined);
    after = next;
    await turn();
  }
}

/** All meals of a stretch of time, newest first. */
export async function readMeals(
  store: Pick<Store, "listMeals">,
  query: Pick<MealQuery, "fromAt" | "beforeAt"> = {},
): Promise<Result<Meal[], StoreError>> {
  const meals: Meal[] = [];
  const read = await readMealPages(store, query, (page) => {
    meals.push(...page);
    return true;
  });
  return read.ok ? ok(meals) : read;
}
