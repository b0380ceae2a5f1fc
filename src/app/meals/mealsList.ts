/** The list of meals: rows read in the background, searched and filtered in memory, kept up with the store. */
import { computed, signal, type ReadonlySignal } from "@preact/signals";
import type { Meal } from "../../meals/meal.js";
import type { Store } from "../../store/store.js";
import type { StoreError } from "../../store/storeError.js";
import {
  groupsIn,
  matchingMeals,
  gatherRows,
  NO_ROWS,
  placesIn,
  withMeal,
  withoutMeal,
  type MealRows,
} from "./mealRows.js";
import { untilIdle } from "../untilIdle.js";
import { fieldDay } from "./localTime.js";
import { createMealsFilter, type MealsFilter } from "./mealsFilter.js";
import { practiceSniffs } from "./practiceSniffs.js";
import { readMealPages } from "./readMeals.js";
import { createShownRows } from "./shownRows.js";

/** The first rows wait so long for the marks of practice plates, and no longer. */
const MARKS_WAIT_MS = 300;
/** Writes that follow one another closely are read once. */
const SETTLE_MS = 150;
/** While the rest is read, the list is drawn anew at most so often. */
const REDRAW_MS = 400;

const pause = (ms: number): Promise<void> => new Promise((resume) => setTimeout(resume, ms));

export type Reading =
  | { readonly kind: "reading" }
  | { readonly kind: "read" }
  | { readonly kind: "failed"; readonly error: StoreError };

export interface MealsList extends Omit<MealsFilter, "drawn" | "leave"> {
  readonly reading: ReadonlySignal<Reading>;
  /** Sniffs of the practice kitchen. */
  readonly practice: ReadonlySignal<ReadonlySet<string>>;
  /** The newest meals, and all once they are read, light: what takes long over many is not worked out on the way. */
  readonly settled: ReadonlySignal<readonly Meal[]>;
  readonly matching: ReadonlySignal<readonly Meal[]>;
  readonly shown: ReadonlySignal<number>;
  /** Meals that could not be read. */
  readonly setAside: ReadonlySignal<number>;
  /** All meals that are kept, read or not. */
  readonly total: ReadonlySignal<number>;
  readonly groups: ReadonlySignal<readonly string[]>;
  /** The latest first. */
  readonly places: ReadonlySignal<readonly string[]>;
  more(): void;
  /** What this page itself wrote or took away, shown before the store has been read again. */
  put(meal: Meal): void;
  drop(id: string): void;
  retry(): void;
  /** Stops following the store. */
  close(): void;
}

/** The two clocks of a list: one that only runs forward, and the day of this phone; and when reading has its turn. */
export interface ListClocks {
  readonly now: () => number;
  /** "2026-11-25". */
  readonly today: () => string;
  /** Before each further page of the first reading. */
  readonly turn: () => Promise<void>;
  /** Before each further page of a later one: nobody waits for it, since the list shows what this page wrote. */
  readonly laterTurn: () => Promise<void>;
}

const CLOCKS: ListClocks = {
  now: () => performance.now(),
  today: () => fieldDay(new Date()),
  turn: untilIdle,
  laterTurn: untilIdle,
};

export function createMealsList(store: Store, clocks: Partial<ListClocks> = {}): MealsList {
  const { now, today, turn, laterTurn } = { ...CLOCKS, ...clocks };
  const rows = signal<MealRows>(NO_ROWS);
  const settled = signal<readonly Meal[]>([]);
  const counted = signal(0);
  const reading = signal<Reading>({ kind: "reading" });
  const practice = signal<ReadonlySet<string>>(new Set());
  const setAside = signal(0);
  const { shown, anew, more } = createShownRows(() => matching.value.length);
  const { drawn, leave, ...narrowing } = createMealsFilter(today, anew);
  let round = 0;
  let settling: ReturnType<typeof setTimeout> | undefined;

  async function read(): Promise<void> {
    round += 1;
    const mine = round;
    // A first reading shows what it has; a later one takes the place of the old rows when it is whole.
    const isFirst = reading.value.kind !== "read";
    const gathered = gatherRows();
    let drawnAt = -Infinity;
    // Known before the first rows are drawn: a mark that came later would move them.
    const practised = practiceSniffs(store).then((known) => {
      if (mine === round && known.ok) practice.value = known.value;
    });
    const [count] = await Promise.all([store.countMeals(), Promise.race([practised, pause(MARKS_WAIT_MS)])]);
    if (mine !== round) return;
    const onPage = (page: readonly Meal[], isLast: boolean) => {
      if (mine !== round) return false;
      gathered.add(page);
      if (isLast || (isFirst && now() - drawnAt > REDRAW_MS)) {
        const isNewest = drawnAt === -Infinity;
        drawnAt = now();
        rows.value = gathered.rows();
        if (isNewest || isLast) settled.value = rows.value.meals;
        counted.value = isLast || !count.ok ? rows.value.meals.length : count.value;
      }
      return true;
    };
    const outcome = await readMealPages(store, {}, onPage, isFirst ? turn : laterTurn);
    if (mine !== round) return;
    const unread = await store.listSetAside();
    if (unread.ok) setAside.value = unread.value.filter(({ table }) => table === "meals").length;
    await practised;
    if (mine !== round) return;
    reading.value = outcome.ok ? { kind: "read" } : { kind: "failed", error: outcome.error };
  }

  const unsubscribe = store.subscribe(["meals"], () => {
    clearTimeout(settling);
    settling = setTimeout(() => void read(), SETTLE_MS);
  });
  void read();

  const matching = computed(() => matchingMeals(rows.value, drawn.value));
  return {
    reading,
    ...narrowing,
    practice,
    setAside,
    settled,
    matching,
    shown,
    total: computed(() => Math.max(counted.value, rows.value.meals.length)),
    groups: computed(() => groupsIn(rows.value)),
    places: computed(() => placesIn(rows.value)),
    more,
    put: (meal) => {
      rows.value = withMeal(rows.value, meal);
      settled.value = rows.value.meals;
    },
    drop: (id) => {
      rows.value = withoutMeal(rows.value, id);
      settled.value = rows.value.meals;
      counted.value = Math.max(0, counted.value - 1);
    },
    retry: () => void read(),
    close: () => {
      round += 1;
      clearTimeout(settling);
      leave();
      unsubscribe();
    },
  };
}
