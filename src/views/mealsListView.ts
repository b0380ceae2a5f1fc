import type { SnapshotVerdict } from "../meals/findingSnapshot.js";
import { SNAPSHOT_VERDICTS } from "../meals/findingSnapshot.js";
import type { MealFilter } from "../meals/mealSearch.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { dayRangeView, type DayRange, type DayRangeFault, type DayRangeView } from "./dayRangeView.js";
import { groupName } from "./groupName.js";
import type { OptionView } from "./plateHomeView.js";
import { toneOf } from "./tone.js";

/** What stands around the rows of the list of meals. */
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
  readonly noMatch: string | null;
  /** What could not be read, so that nothing is missing without a word. */
  readonly setAside: string | null;
  readonly empty: { readonly title: string; readonly text: string } | null;
}

export interface MealsListState {
  /** How many meals match. */
  readonly matching: number;
  /** All meals that are kept. */
  readonly total: number;
  readonly filter: MealFilter;
  readonly days: DayRange;
  readonly daysFault: DayRangeFault | null;
  /** Meals that could not be read and were set aside. */
  readonly setAside: number;
  /** Groups and places that some meal names. */
  readonly groups: readonly string[];
  readonly places: readonly string[];
}

/** The option that lets everything through. */
export const ANY = "any";

type ListWords = Words<"common" | "finding" | "meals">;

/** Words around the list of meals. */
export function mealsListView(state: MealsListState, words: ListWords): MealsListView {
  const { meals: text } = words.text;
  const { matching, total } = state;
  return {
    title: text.title,
    add: text.add,
    review: text.review,
    search: { label: text.search, hint: text.searchHint, value: state.filter.text ?? "" },
    filters: total === 0 ? null : filtersOf(state, words),
    count: total === 0 ? null : countOf(state, words),
    noMatch: total > 0 && matching === 0 ? text.noMatch : null,
    setAside: state.setAside === 0 ? null : text.setAside(numberText(state.setAside, words.formats)),
    empty: total === 0 ? { title: text.emptyTitle, text: text.emptyText } : null,
  };
}

/** While the rest is being read, what is there is not "50 of 10,000 that match". */
function countOf(state: MealsListState, { text, formats }: ListWords): string {
  const { matching, total } = state;
  const found = isNarrowed(state) ? matching : total;
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
