import type { SnapshotVerdict } from "../meals/findingSnapshot.js";
import { SNAPSHOT_VERDICTS } from "../meals/findingSnapshot.js";
import type { Meal } from "../meals/meal.js";
import { groupByDay } from "../meals/mealDays.js";
import type { MealFilter } from "../meals/mealSearch.js";
import type { Words } from "../text/catalogue.js";
import { dayBefore, dayKey, dayText, numberText } from "../text/formats.js";
import { dayRangeView, type DayRange, type DayRangeFault, type DayRangeView } from "./dayRangeView.js";
import { groupName } from "./groupName.js";
import { mealRowView, type MealRowView } from "./mealRowView.js";
import type { OptionView } from "./plateHomeView.js";
import { toneOf } from "./tone.js";

/** The meals, by day. Only what is shown is worded, so that ten thousand cost no more than fifty. */
export interface MealsListView {
  readonly title: string;
  readonly add: string;
  readonly review: string;
  readonly search: { readonly label: string; readonly hint: string; readonly value: string };
  readonly filters: {
    readonly title: string;
    readonly group: { readonly label: string; readonly options: readonly OptionView[] };
    readonly verdict: { readonly label: string; readonly options: readonly OptionView[] };
    readonly place: { readonly label: string; readonly options: readonly OptionView[] };
    readonly truth: { readonly label: string; readonly options: readonly OptionView[] };
    readonly days: DayRangeView;
    readonly reaction: { readonly label: string; readonly on: boolean };
    readonly clear: string | null;
  } | null;
  /** From the first meal on, so that a search moves nothing. */
  readonly count: string | null;
  readonly days: readonly {
    readonly key: string;
    readonly heading: string;
    readonly meals: readonly MealRowView[];
  }[];
  readonly more: string | null;
  readonly noMatch: string | null;
  /** What could not be read, so that nothing is missing without a word. */
  readonly setAside: string | null;
  readonly empty: { readonly title: string; readonly text: string } | null;
}

export interface MealsListState {
  /** The meals that match, newest first. */
  readonly matching: readonly Meal[];
  /** How many of them to show; more on demand. */
  readonly shown: number;
  /** All meals that are kept. */
  readonly total: number;
  readonly filter: MealFilter;
  readonly days: DayRange;
  readonly daysFault: DayRangeFault | null;
  /** Sniffs of the practice kitchen. */
  readonly practice: ReadonlySet<string>;
  /** Meals that could not be read and were set aside. */
  readonly setAside: number;
  /** Groups and places that some meal names. */
  readonly groups: readonly string[];
  readonly places: readonly string[];
  readonly nowMs: number;
}

/** The option that lets everything through. */
export const ANY = "any";

type ListWords = Words<"common" | "finding" | "meals">;

/** Words of the list of meals. */
export function mealsListView(state: MealsListState, words: ListWords): MealsListView {
  const { meals: text, common } = words.text;
  const { matching, shown, total, practice } = state;
  return {
    title: text.title,
    add: text.add,
    review: text.review,
    search: { label: text.search, hint: text.searchHint, value: state.filter.text ?? "" },
    filters: total === 0 ? null : filtersOf(state, words),
    count: total === 0 ? null : countOf(state, words),
    days: groupByDay(matching.slice(0, shown), words.formats.timeZone).map(({ day, meals }) => ({
      key: day,
      heading: headingOf(meals[0]?.at ?? "", state.nowMs, words),
      meals: meals.map((meal) => mealRowView(meal, words, practice)),
    })),
    more: matching.length > shown ? common.more : null,
    noMatch: total > 0 && matching.length === 0 ? text.noMatch : null,
    setAside: state.setAside === 0 ? null : text.setAside(numberText(state.setAside, words.formats)),
    empty: total === 0 ? { title: text.emptyTitle, text: text.emptyText } : null,
  };
}

/** While the rest is being read, what is there is not "50 of 10,000 that match". */
function countOf(state: MealsListState, { text, formats }: ListWords): string {
  const { matching, total } = state;
  const found = isNarrowed(state) ? matching.length : total;
  return text.meals.count(numberText(found, formats), numberText(total, formats));
}

/** Are the meals narrowed by anything, even if it lets all through? */
const isNarrowed = (state: MealsListState): boolean =>
  filtersSet(state) > 0 || (state.filter.text ?? "") !== "";

/** How many choices narrow the list; both days are one. */
function filtersSet({ filter, days }: MealsListState): number {
  const { text: _searched, fromAt: _from, beforeAt: _before, ...choices } = filter;
  const chosen = Object.values(choices).filter((value) => value !== undefined).length;
  return chosen + (days.from === "" && days.upto === "" ? 0 : 1);
}

function headingOf(at: string, nowMs: number, words: ListWords): string {
  const { common } = words.text;
  const day = dayKey(at, words.formats);
  const today = dayKey(new Date(nowMs).toISOString(), words.formats);
  if (day === today) return common.today;
  if (day === dayBefore(today)) return common.yesterday;
  return dayText(at, words.formats);
}

function filtersOf(state: MealsListState, words: ListWords): MealsListView["filters"] {
  const { meals: text } = words.text;
  const { filter, groups, places } = state;
  const on = filtersSet(state);
  const options = (
    chosen: string | undefined,
    entries: readonly (readonly [string, string])[],
  ): readonly OptionView[] => [
    { id: ANY, label: text.any, chosen: chosen === undefined },
    ...entries.map(([id, label]) => ({ id, label, chosen: id === chosen })),
  ];
  const verdictName = (verdict: SnapshotVerdict) => words.text.finding.verdicts[toneOf(verdict)];
  const truth = filter.truthKnown === undefined ? undefined : filter.truthKnown ? "known" : "open";
  return {
    title: on === 0 ? text.filters : text.filtersOn(numberText(on, words.formats)),
    group: {
      label: text.filterGroup,
      options: options(
        filter.group,
        groups.map((group) => [group, groupName(group, words)]),
      ),
    },
    verdict: {
      label: text.filterVerdict,
      options: options(
        filter.verdict,
        SNAPSHOT_VERDICTS.map((verdict) => [verdict, verdictName(verdict)]),
      ),
    },
    place: {
      label: text.filterPlace,
      options: options(
        filter.place,
        places.map((place) => [place, place]),
      ),
    },
    truth: {
      label: text.filterTruth,
      options: options(truth, [
        ["known", text.truthKnown],
        ["open", text.truthOpen],
      ]),
    },
    days: dayRangeView(state.days, state.daysFault, words),
    reaction: { label: text.filterReaction, on: filter.reaction === true },
    clear: isNarrowed(state) ? text.clear : null,
  };
}
