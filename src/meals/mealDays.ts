import { groupBy } from "./groupBy.js";
import type { Meal } from "./meal.js";

/** The meals of one day where they were eaten. */
export interface MealDay<T> {
  /** Calendar day, "2026-11-25". */
  readonly day: string;
  readonly meals: readonly T[];
}

/**
 * Groups meals by calendar day, in the order given; a day that comes up again later is one day still.
 *
 * @param timeZone - IANA name such as "Europe/Berlin"
 * @throws {RangeError} if there is no such time zone
 * @see ECMA-402, Intl.DateTimeFormat; ISO 8601 for the day's form
 */
export function groupByDay<T extends Pick<Meal, "at">>(meals: readonly T[], timeZone: string): MealDay<T>[] {
  const dayOf = dayFormat(timeZone);
  const days = groupBy(meals, (meal) => dayOf(Date.parse(meal.at)));
  return [...days].map(([day, those]) => ({ day, meals: those }));
}

/** Calendar day of an instant in a time zone, as "2026-11-25". @throws {RangeError} if there is no such time zone */
export function dayFormat(timeZone: string): (atMs: number) => string {
  const format = new Intl.DateTimeFormat("en", {
    timeZone,
    calendar: "iso8601",
    numberingSystem: "latn",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
  });
  return (atMs) => {
    const parts = new Map(format.formatToParts(atMs).map(({ type, value }) => [type, value]));
    return `${parts.get("year")?.padStart(4, "0")}-${parts.get("month")}-${parts.get("day")}`;
  };
}
