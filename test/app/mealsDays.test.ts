// The days of the list of meals, and its practice plates.
import { describe, expect, it, vi } from "vitest";
import { createMealsList } from "../../src/app/meals/mealsList.js";
import { newMeal } from "../../src/meals/meal.js";
import { createMemoryStore } from "../../src/store/memoryStore.js";
import { found } from "../meals/findings.js";
import { got } from "../store/outcomes.js";
import { sniffAt } from "../store/records.js";
import { until } from "./mealsPorts.js";

describe("the days of the list", () => {
  const meals = [
    ["a", "2026-11-23T12:00"],
    ["b", "2026-11-24T00:00"],
    ["c", "2026-11-24T23:59"],
    ["d", "2026-11-25T12:00"],
  ].map(([id = "", when = ""]) => ({
    ...newMeal(id, new Date(when).toISOString()),
    place: id === "c" ? "Canal kitchen" : "Night market",
    finding: found("meat", id === "b" ? "uncertain" : "smelled"),
  }));

  async function opened() {
    const store = createMemoryStore();
    await got(store.save({ meals }));
    const list = createMealsList(store, { today: () => "2026-11-25" });
    await until(() => list.reading.value.kind === "read");
    return { list, shown: () => list.matching.value.map(({ id }) => id) };
  }

  it("holds both days whole, in the time of this phone, and either end may be open", async () => {
    const { list, shown } = await opened();
    list.between("2026-11-24", "2026-11-24");
    expect(shown()).toEqual(["c", "b"]);
    list.between("2026-11-24", "");
    expect(shown()).toEqual(["d", "c", "b"]);
    list.between("", "2026-11-23");
    expect(shown()).toEqual(["a"]);
    list.close();
  });

  it("narrows together with group, finding, place and search, and clears with them", async () => {
    const { list, shown } = await opened();
    list.between("2026-11-24", "2026-11-25");
    list.narrow("group", "meat");
    list.narrow("verdict", "smelled");
    expect(shown()).toEqual(["d", "c"]);
    list.narrow("place", "Canal kitchen");
    expect(shown()).toEqual(["c"]);
    list.search("market");
    await vi.waitFor(() => expect(shown()).toEqual([]));
    list.clear();
    await vi.waitFor(() => expect(shown()).toHaveLength(4));
    expect(list.days.value).toEqual({ from: "", upto: "" });
    list.close();
  });

  it("narrows nothing by days that cannot be, and says why", async () => {
    const { list, shown } = await opened();
    list.between("2026-11-24", "2026-11-24");
    list.between("2026-11-25", "2026-11-24");
    expect(list.daysFault.value).toBe("order");
    expect(shown()).toHaveLength(4);
    list.between("2026-11-26", "");
    expect(list.daysFault.value).toBe("future");
    list.between("2026-02-30", "");
    expect(list.days.value.from).toBe("");
    list.close();
  });

  it("knows which meals are practice plates", async () => {
    const store = createMemoryStore();
    await got(store.save({ sniffs: [sniffAt("real", 1)] }));
    await got(store.save({ sniffs: [sniffAt("practice", 2)], demo: true }));
    const list = createMealsList(store);
    await until(() => list.reading.value.kind === "read");
    expect([...list.practice.value]).toEqual(["practice"]);
    list.close();
  });
});
