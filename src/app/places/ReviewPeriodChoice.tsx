import { useState } from "preact/hooks";
import { ReviewPeriod } from "../../screens/ReviewPeriod.js";
import { ALL_DAYS, dayRangeFault, type DayRange, type DayRangeFault } from "../../views/dayRangeView.js";
import { ANY_DAYS, OWN_DAYS, reviewPeriodView } from "../../views/reviewPeriodView.js";
import type { AppModel } from "../appModel.js";
import { fieldDay } from "../meals/localTime.js";
import { addressOf, dayOrNone, MONTHS_BACK, monthsBack, periodText, type Period } from "../meals/period.js";

interface Props {
  readonly app: AppModel;
  readonly period: Period;
}

interface OwnDays {
  readonly range: DayRange;
  /** Told once the person asked for these days. */
  readonly fault: DayRangeFault | null;
}

/** All meals, the last months, or any two days. */
export function ReviewPeriodChoice({ app, period }: Props) {
  const words = app.preferences.words.value;
  const chosen = period === null ? ANY_DAYS : idOf(period);
  const ready = MONTHS_BACK.map((months) => {
    const one = monthsBack(months, app.ports.nowMs());
    return { id: idOf(one), months, days: periodText(one, words.formats.locale) };
  });
  const isOwn = period !== null && ready.every(({ id }) => id !== chosen);
  const [own, setOwn] = useState<OwnDays | null>(isOwn ? { range: period, fault: null } : null);
  const view = reviewPeriodView({ ready, chosen, own: own?.range ?? null, fault: own?.fault ?? null }, words);
  const choose = (id: string) => {
    if (id === OWN_DAYS) return setOwn({ range: period ?? ALL_DAYS, fault: null });
    setOwn(null);
    app.router.go("meals", "review", ...(id === ANY_DAYS ? [] : id.split("/")));
  };
  const show = () => {
    if (own === null) return;
    const fault = dayRangeFault(own.range, fieldDay(new Date(app.ports.nowMs())), "both");
    setOwn({ ...own, fault });
    if (fault === null) app.router.go("meals", "review", ...addressOf(own.range));
  };
  const calls = {
    onChoose: choose,
    onDays: (from: string, upto: string) =>
      setOwn({ range: { from: dayOrNone(from), upto: dayOrNone(upto) }, fault: null }),
    onShow: show,
  };
  return <ReviewPeriod view={view} calls={calls} />;
}

const idOf = (period: NonNullable<Period>): string => addressOf(period).join("/");
