import { ok, type Result } from "../../kernel/result.js";
import type { Meal } from "../../meals/meal.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import type { MealQuery, PageCursor } from "../../store/storeTypes.js";

/** The first page fills a screen; the next ones are as many as can be read between two key presses. */
export const FIRST_PAGE = 50;
const NEXT_PAGE = 250;

/**
 * Reads meals page by page, newest first, and lets the page breathe in between.
 *
 * @param onPage - gets each page as it comes; false ends the reading
 */
export async function readMealPages(
  store: Pick<Store, "listMeals">,
  query: Pick<MealQuery, "fromAt" | "beforeAt">,
  onPage: (meals: readonly Meal[], isLast: boolean) => boolean,
): Promise<Result<void, StoreError>> {
  let after: PageCursor | null = null;
  let limit = FIRST_PAGE;
  for (;;) {
    const page = await store.listMeals({ ...query, limit, ...(after === null ? {} : { after }) });
    if (!page.ok) return page;
    const { items, next } = page.value;
    if (!onPage(items, next === null) || next === null) return ok(undefined);
    after = next;
    limit = NEXT_PAGE;
    await breathe();
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

const breathe = () => new Promise<void>((resume) => setTimeout(resume, 0));
