import type { Words } from "../text/catalogue.js";

/** First and last day, "2026-11-25", both included; "" where an end is open or the field holds no day. */
export interface DayRange {
  readonly from: string;
  readonly upto: string;
}

/** Why a range of days cannot be shown: a day is missing, the order is wrong, or it has not come yet. */
export type DayRangeFault = "empty" | "order" | "future";

/** Two day fields with what is wrong with them. */
export interface DayRangeView {
  readonly from: { readonly label: string; readonly value: string };
  readonly upto: { readonly label: string; readonly value: string };
  readonly fault: string | undefined;
}

export const ALL_DAYS: DayRange = { from: "", upto: "" };

/**
 * What is wrong with a range, if anything. Days of this form sort as text.
 *
 * @param today - "2026-11-25"
 * @param ends - must both days be named, or may either be open?
 * @see ISO 8601-1:2019, 5.2.2.1, calendar date, extended format
 */
export function dayRangeFault(
  { from, upto }: DayRange,
  today: string,
  ends: "both" | "open",
): DayRangeFault | null {
  if (ends === "both" && (from === "" || upto === "")) return "empty";
  if (from !== "" && upto !== "" && from > upto) return "order";
  return from > today ? "future" : null;
}

/** Words of the fields. */
export function dayRangeView(
  range: DayRange,
  fault: DayRangeFault | null,
  { text }: Words<"meals">,
): DayRangeView {
  const { days } = text.meals;
  return {
    from: { label: days.from, value: range.from },
    upto: { label: days.upto, value: range.upto },
    fault: fault === null ? undefined : days.faults[fault],
  };
}
