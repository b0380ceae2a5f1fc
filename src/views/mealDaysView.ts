import type { Meal } from "../meals/meal.js";
import { groupByDay } from "../meals/mealDays.js";
import type { Words } from "../text/catalogue.js";
import { dayBefore, dayKey, dayText } from "../text/formats.js";
import { mealRowView, type MealRowView } from "./mealRowView.js";

/** The meals, by day. Only what is shown is worded, so that ten thousand cost no more than fifty. */
export interface MealDaysView {
  readonly days: readonly {
    readonly key: string;
    readonly heading: string;
    readonly meals: readonly MealRowView[];
  }[];
  readonly more: string | null;
}

export interface MealDaysState {
  /** The meals that match, newest first. */
  readonly matching: readonly Meal[];
  /** How many of them to show; more on demand. */
  readonly shown: number;
  /** Sniffs of the practice kitchen. */
  readonly practice: ReadonlySet<string>;
  readonly nowMs: number;
}

type DaysWords = Words<"common" | "finding" | "meals">;

/** Words of the rows of the list of meals. */
export function mealDaysView(state: MealDaysState, words: DaysWords): MealDaysView {
  const { matching, shown, practice } = state;
  return {
    days: groupByDay(matching.slice(0, shown), words.formats.timeZone).map(({ day, meals }) => ({
      key: day,
      heading: headingOf(meals[0]?.at ?? "", state.nowMs, words),
      meals: meals.map((meal) => mealRowView(meal, words, practice)),
    })),
    more: matching.length > shown ? words.text.common.more : null,
  };
}

function headingOf(at: string, nowMs: number, words: DaysWords): string {
  const { common } = words.text;
  const day = dayKey(at, words.formats);
  const today = dayKey(new Date(nowMs).toISOString(), words.formats);
  if (day === today) return common.today;
  if (day === dayBefore(today)) return common.yesterday;
  return dayText(at, words.formats);
}
