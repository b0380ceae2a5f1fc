/** What narrows the list of meals: words, choices and days. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import { SNAPSHOT_VERDICTS } from "../../meals/findingSnapshot.js";
import type { MealFilter } from "../../meals/mealSearch.js";
import { ALL_DAYS, dayRangeFault, type DayRange, type DayRangeFault } from "../../views/dayRangeView.js";
import { dayOrNone, queryBetween } from "./period.js";

/** The option of a choice that lets everything through. */
const ANY = "any";

export type FilterChoice = "group" | "verdict" | "place" | "truth";

export interface MealsFilter {
  readonly filter: ReadonlySignal<MealFilter>;
  /**
   * The same as the list shows it: words only once the finger rests, so that between two letters only a letter is
   * drawn.
   */
  readonly drawn: ReadonlySignal<MealFilter>;
  /** Days to show, as they stand in the fields. */
  readonly days: ReadonlySignal<DayRange>;
  readonly daysFault: ReadonlySignal<DayRangeFault | null>;
  search(text: string): void;
  narrow(key: FilterChoice, option: string): void;
  reactionOnly(on: boolean): void;
  /** Two days as the fields write them. Days that cannot be shown narrow nothing. */
  between(from: string, upto: string): void;
  clear(): void;
  /** Forgets words that the list has not shown yet. */
  leave(): void;
}

/** How long a finger rests between two words, rather than two letters. Common practice. */
const TYPING_MS = 200;

/**
 * @param today - "2026-11-25"
 * @param onDrawn - called whenever the list is to be drawn anew
 */
export function createMealsFilter(today: () => string, onDrawn: () => void): MealsFilter {
  const filter = signal<MealFilter>({});
  const days = signal(ALL_DAYS);
  const daysFault = computed(() => dayRangeFault(days.value, today(), "open"));

  const drawn = signal(filter.value);
  let typing: ReturnType<typeof setTimeout> | undefined;

  function draw(): void {
    drawn.value = filter.value;
    onDrawn();
  }

  function change(next: MealFilter): void {
    filter.value = next;
    clearTimeout(typing);
    if (next.text === drawn.value.text) draw();
    else typing = setTimeout(draw, TYPING_MS);
  }

  return {
    filter,
    drawn,
    leave: () => clearTimeout(typing),
    days,
    daysFault,
    search: (text) => change({ ...filter.value, text }),
    narrow: (key, option) => change(narrowed(filter.value, key, option)),
    reactionOnly: (on) => change(without(filter.value, "reaction", on ? { reaction: true } : {})),
    between: (from, upto) => {
      days.value = { from: dayOrNone(from), upto: dayOrNone(upto) };
      const { fromAt: _from, beforeAt: _before, ...others } = filter.value;
      change(daysFault.value === null ? { ...others, ...queryBetween(days.value) } : others);
    },
    clear: () => {
      days.value = ALL_DAYS;
      change({});
    },
  };
}

/** The filter with one choice made, or taken back by "any". */
export function narrowed(filter: MealFilter, key: FilterChoice, option: string): MealFilter {
  const field = key === "truth" ? "truthKnown" : key;
  if (option === ANY) return without(filter, field, {});
  if (key === "truth") return without(filter, field, { truthKnown: option === "known" });
  if (key !== "verdict") return without(filter, field, { [key]: option });
  const verdict = SNAPSHOT_VERDICTS.find((known) => known === option);
  return without(filter, field, verdict === undefined ? {} : { verdict });
}

function without(filter: MealFilter, field: keyof MealFilter, put: MealFilter): MealFilter {
  const { [field]: _before, ...others } = filter;
  return { ...others, ...put };
}
