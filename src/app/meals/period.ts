/** The stretch of time that a review or a report looks at, in whole days of this phone. */
import type { MealQuery } from "../../store/storeTypes.js";
import type { DayRange } from "../../views/dayRangeView.js";
import { fieldDay } from "./localTime.js";

/** First and last day, "2026-11-25", both included; null: all meals. */
export type Period = DayRange | null;

/** How far back the ready choices reach, in months. */
export const MONTHS_BACK = [1, 3, 12] as const;

const DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The last so many months, up to today. A day that the earlier month does not have becomes its last one. */
export function monthsBack(months: number, nowMs: number): NonNullable<Period> {
  const today = new Date(nowMs);
  const first = new Date(today.getFullYear(), today.getMonth() - months, 1);
  const lastOfMonth = new Date(first.getFullYear(), first.getMonth() + 1, 0).getDate();
  first.setDate(Math.min(today.getDate(), lastOfMonth));
  return { from: fieldDay(first), upto: fieldDay(today) };
}

/** The period that a page's address names: "from" and "upto", as two parts. Anything else means all meals. */
export function periodOf([from = "", upto = ""]: readonly string[]): Period {
  return isDay(from) && isDay(upto) && from <= upto ? { from, upto } : null;
}

export const addressOf = (period: Period): string[] => (period === null ? [] : [period.from, period.upto]);

/** The instants between which its meals lie. */
export function queryOf(period: Period): Pick<MealQuery, "fromAt" | "beforeAt"> {
  return period === null ? {} : queryBetween(period);
}

/** The instants between which the meals of a range lie whose ends may be open. */
export function queryBetween({ from, upto }: DayRange): Pick<MealQuery, "fromAt" | "beforeAt"> {
  const before = upto === "" ? null : dayStart(upto);
  before?.setDate(before.getDate() + 1);
  return {
    ...(from === "" ? {} : { fromAt: dayStart(from).toISOString() }),
    ...(before === null ? {} : { beforeAt: before.toISOString() }),
  };
}

/** "25 Aug – 25 Nov 2026", in the person's language. @see ECMA-402, formatRange */
export function periodText(period: NonNullable<Period>, locale: string): string {
  const format = new Intl.DateTimeFormat(locale, { day: "numeric", month: "short", year: "numeric" });
  return format.formatRange(dayStart(period.from), dayStart(period.upto));
}

/** A day as the fields write it; "" for what is none. */
export const dayOrNone = (text: string): string => (isDay(text) ? text : "");

const dayStart = (day: string): Date => new Date(`${day}T00:00`);

function isDay(text: string): boolean {
  return DAY.test(text) && !Number.isNaN(dayStart(text).getTime()) && fieldDay(dayStart(text)) === text;
}
