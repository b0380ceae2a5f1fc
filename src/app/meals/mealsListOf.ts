import type { AppModel } from "../appModel.js";
import { restForTouches } from "../restForTouches.js";
import { createMealsList, type MealsList } from "./mealsList.js";

/** A deleted meal can be brought back for a few seconds; after an hour it goes for real, with its photos. */
const KEEP_DELETED_MS = 3_600_000;

/** So long after a finger came down its tap is answered, and the page it asked for drawn, on a slow phone too. */
const REST_MS = 300;
/** Somebody who taps on and on is at work. */
const LONG_REST_MS = 2000;

const lists = new WeakMap<AppModel, MealsList>();

/** The app's one list of meals: read when Meals is first opened, then kept up, so that coming back costs nothing. */
export function mealsListOf(app: AppModel): MealsList {
  const known = lists.get(app);
  if (known !== undefined) return known;
  const { store, nowMs } = app.ports;
  const rest = restForTouches(window);
  const list = createMealsList(store, { turn: () => rest(REST_MS), laterTurn: () => rest(LONG_REST_MS) });
  lists.set(app, list);
  void store.purgeDeletedMeals(new Date(nowMs() - KEEP_DELETED_MS).toISOString());
  return list;
}
