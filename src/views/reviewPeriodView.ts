import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { dayRangeView, type DayRange, type DayRangeFault, type DayRangeView } from "./dayRangeView.js";
import type { OptionView } from "./plateHomeView.js";

/** Which days a review or a report looks at. */
export interface ReviewPeriodView {
  readonly label: string;
  readonly options: readonly OptionView[];
  /** The two day fields; null while a ready choice is taken. */
  readonly own: { readonly fields: DayRangeView; readonly show: string } | null;
}

export interface ReviewPeriodState {
  /** Ready choices, each with its id, how many months it reaches back, and its days in words. */
  readonly ready: readonly { readonly id: string; readonly months: number; readonly days: string }[];
  /** Id of the choice that is shown; "any" for all meals. */
  readonly chosen: string;
  /** What stands in the fields; null while they are closed. */
  readonly own: DayRange | null;
  readonly fault: DayRangeFault | null;
}

export const ANY_DAYS = "any";
export const OWN_DAYS = "own";

/** Words of the choice. What is shown but is no ready choice counts as days of one's own. */
export function reviewPeriodView(
  state: ReviewPeriodState,
  words: Words<"meals" | "review">,
): ReviewPeriodView {
  const { period } = words.text.review;
  const { ready, chosen, own, fault } = state;
  const isReady = chosen === ANY_DAYS || ready.some(({ id }) => id === chosen);
  const current = own !== null || !isReady ? OWN_DAYS : chosen;
  const options = [
    { id: ANY_DAYS, label: period.all },
    ...ready.map(({ id, months, days }) => ({
      id,
      label: period.back(numberText(months, words.formats), days),
    })),
    { id: OWN_DAYS, label: period.own },
  ];
  return {
    label: period.label,
    options: options.map((option) => ({ ...option, chosen: option.id === current })),
    own: own === null ? null : { fields: dayRangeView(own, fault, words), show: period.show },
  };
}
