// The list of Meals: read page by page, followed, searched and shown.
import { effect } from "@preact/signals";
import { describe, expect, it, vi } from "vitest";
import { createMealsList } from "../../src/app/meals/mealsList.js";
import { MEALS_PAGE, readMeals } from "../../src/app/meals/readMeals.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import type { StoreError } from "../../src/store/storeError.js";
import { got } from "../store/outcomes.js";
import { at, mealAt } from "../store/records.js";
import { until } from "./mealsPorts.js";

describe("the list of meals", () => {
  const many = Array.from({ length: 620 }, (_, i) => mealAt(`m${String(i).padStart(3, "0")}`, i));

  it("shows the first page at once, then reads on to the last meal, newest first", async () => {
    const store = createMemoryStore();
    await got(store.save({ meals: many }));
    const list = createMealsList(store, { now: () => 0 });
    await until(() => list.matching.value.length > 0);
    expect(list.matching.value).toHaveLength(MEALS_PAGE);
    expect(list.total.value).toBe(620);
    await until(() => list.reading.value.kind === "read");
    expect(list.matching.value.map(({ id }) => id)).toEqual(many.map(({ id }) => id).reverse());
    list.close();
  });

  it("has the newest meals for longer work at first, and then all of them, but nothing on the way", async () => {
    const store = createMemoryStore();
    await got(store.save({ meals: many }));
    let seconds = 0;
    const list = createMealsList(store, { now: () => (seconds += 1000) });
    const [drawn, settled] = [list.matching, list.settled].map((one) => {
      const lengths: number[] = [];
      effect(() => void lengths.push(one.value.length));
      return lengths;
    });
    await until(() => list.reading.value.kind === "read");
    expect(drawn).toHaveLength(1 + Math.ceil(620 / MEALS_PAGE));
    expect(settled).toEqual([0, MEALS_PAGE, 620]);
    list.put(mealAt("new", 700));
    expect(settled?.at(-1)).toBe(621);
    list.drop("new");
    expect(settled?.at(-1)).toBe(620);
    list.close();
  });

  it("reads all anew after a write at a turn of its own: whoever taps on and on goes first", async () => {
    const store = createMemoryStore();
    await got(store.save({ meals: many }));
    const [turn, laterTurn] = [vi.fn(async () => undefined), vi.fn(async () => undefined)];
    const list = createMealsList(store, { turn, laterTurn });
    await until(() => list.reading.value.kind === "read");
    const further = Math.ceil(620 / MEALS_PAGE) - 1;
    expect([turn.mock.calls.length, laterTurn.mock.calls.length]).toEqual([further, 0]);
    await got(store.save({ meals: [mealAt("new", 700)] }));
    await until(() => list.matching.value.length === 621);
    expect([turn.mock.calls.length, laterTurn.mock.calls.length]).toEqual([further, further]);
    list.close();
  });

  it("follows what other tabs write, and closes its ears when it is closed", async () => {
    const store = createMemoryStore();
    const list = createMealsList(store);
    await until(() => list.reading.value.kind === "read");
    await got(store.save({ meals: [mealAt("m1", 1)] }));
    await until(() => list.matching.value.length === 1);
    await got(store.deleteMeal("m1", at(2)));
    await until(() => list.matching.value.length === 0);
    list.close();
    await got(store.restoreMeal("m1", at(3)));
    await new Promise((resume) => setTimeout(resume, 250));
    expect(list.matching.value).toHaveLength(0);
  });

  it("shows more only on demand, and begins anew with another search", async () => {
    const store = createMemoryStore();
    await got(store.save({ meals: many }));
    const list = createMealsList(store);
    await until(() => list.reading.value.kind === "read");
    list.more();
    expect(list.shown.value).toBe(75);
    for (let taps = 0; taps < 4; taps += 1) list.more();
    expect(list.shown.value).toBe(281); // 125, 175, 225, then a quarter more
    list.search("stall");
    await until(() => list.shown.value === 25);
    expect(list.matching.value).toHaveLength(620);
    list.search("no such stall");
    await until(() => list.matching.value.length === 0);
    list.more();
    expect(list.shown.value).toBe(0);
    list.clear();
    await until(() => list.matching.value.length === 620);
    list.close();
  });

  it("follows a word once the finger rests, not letter by letter; a choice at once", async () => {
    const store = createMemoryStore();
    await got(store.save({ meals: many }));
    const list = createMealsList(store);
    await until(() => list.reading.value.kind === "read");
    let lists = 0;
    const stop = list.matching.subscribe(() => (lists += 1));
    for (const typed of ["n", "no", "no ", "no s", "no such stall"]) list.search(typed);
    expect(list.filter.value.text).toBe("no such stall");
    expect(list.matching.value).toHaveLength(620);
    await until(() => list.matching.value.length === 0);
    expect(lists).toBe(2); // as it was, and once after the last letter
    list.narrow("truth", "known");
    expect(lists).toBe(3);
    stop();
    list.close();
  });

  it("says why when the store cannot be read, and reads again on demand", async () => {
    const store = createMemoryStore();
    let broken = true;
    const closed: StoreError = { kind: "closed" };
    const list = createMealsList({
      ...store,
      listMeals: (query) => (broken ? Promise.resolve({ ok: false, error: closed }) : store.listMeals(query)),
    });
    await until(() => list.reading.value.kind === "failed");
    broken = false;
    list.retry();
    await until(() => list.reading.value.kind === "read");
    list.close();
  });

  it("shows at once what this page wrote, before the store is read again", async () => {
    const store = createMemoryStore();
    const list = createMealsList(store);
    await until(() => list.reading.value.kind === "read");
    list.put(mealAt("m1", 1));
    expect(list.matching.value.map(({ id }) => id)).toEqual(["m1"]);
    expect(list.total.value).toBe(1);
    list.drop("m1");
    expect(list.total.value).toBe(0);
    list.close();
  });
});

it("reads a stretch of time to its end, whatever the pages", async () => {
  const store = createMemoryStore();
  await got(store.save({ meals: Array.from({ length: 400 }, (_, i) => mealAt(`m${i}`, i)) }));
  expect(await got(readMeals(store))).toHaveLength(400);
  expect(await got(readMeals(store, { fromAt: at(10), beforeAt: at(310) }))).toHaveLength(300);
});
