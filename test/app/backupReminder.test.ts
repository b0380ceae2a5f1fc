// The reminder of a backup over a store in memory. Counts are by hand.
import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { createBackupReminder } from "../../src/app/you/backupReminder.js";
import { newMeal } from "../../src/meals/meal.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import type { Store } from "../../src/store/store.js";
import { NOW } from "./mealsPorts.js";

const DAY_MS = 86_400_000;
let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
  });
});
afterEach(() => vi.unstubAllGlobals());

async function addMeals(store: Store, from: number, count: number, demo = false): Promise<void> {
  const at = new Date(NOW).toISOString();
  const meals = Array.from({ length: count }, (_, i) => newMeal(`meal-${from + i}`, at));
  await store.save({ meals, demo });
}

async function afterDays(store: Store, days: number) {
  const reminder = createBackupReminder({ store, nowMs: () => NOW + days * DAY_MS });
  await reminder.check();
  return reminder;
}

it("says nothing at the first look, however much is there", async () => {
  const store = createMemoryStore();
  await addMeals(store, 0, 500);
  expect((await afterDays(store, 0)).due.value).toBeNull();
  expect((await afterDays(store, 30)).due.value).toBeNull();
});

it("counts what came since, and is silent again after a backup or a “later”", async () => {
  const store = createMemoryStore();
  await afterDays(store, 0);
  await addMeals(store, 0, 12);
  expect((await afterDays(store, 13)).due.value).toBeNull();
  const due = await afterDays(store, 15);
  expect(due.due.value).toBe(12);
  await due.rest();
  expect(due.due.value).toBeNull();
  expect((await afterDays(store, 40)).due.value).toBeNull();
  await addMeals(store, 12, 10);
  expect((await afterDays(store, 40)).due.value).toBe(10);
});

it("leaves out meals of the practice kitchen, deleted ones too", async () => {
  const store = createMemoryStore();
  await afterDays(store, 0);
  await addMeals(store, 0, 11, true);
  await addMeals(store, 11, 9);
  await store.deleteMeal("meal-0", new Date(NOW).toISOString());
  expect((await afterDays(store, 15)).due.value).toBeNull();
  await addMeals(store, 20, 1);
  expect((await afterDays(store, 15)).due.value).toBe(10);
});

it("begins to count anew where what it had kept cannot be read", async () => {
  const store = createMemoryStore();
  await addMeals(store, 0, 50);
  kept.set("nidor-backup-baseline", '{"at":"not a day","records":0}');
  expect((await afterDays(store, 100)).due.value).toBeNull();
  expect((await afterDays(store, 100)).due.value).toBeNull();
});

it("says nothing where the browser keeps nothing apart from the data", async () => {
  vi.stubGlobal("localStorage", {
    getItem: () => {
      throw new Error("denied");
    },
  });
  const store = createMemoryStore();
  await addMeals(store, 0, 50);
  expect((await afterDays(store, 100)).due.value).toBeNull();
});
