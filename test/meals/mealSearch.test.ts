import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldText } from "../../src/meals/foldText.js";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { dayFormat, groupByDay } from "../../src/meals/mealDays.js";
import { indexMeal, mealMatches, searchMeals, type MealFilter } from "../../src/meals/mealSearch.js";
import { anyMeal } from "./arbitraries.js";
import { found } from "./findings.js";

const meal = (id: string, more: Partial<Meal>): Meal => ({ ...newMeal(id, "2026-11-25T18:30:00Z"), ...more });

const evening: Meal[] = [
  meal("m1", { dish: "Klößchen in klarer Brühe", place: "Stall 4", finding: found("meat", "smelled") }),
  meal("m2", {
    dish: "leek dumplings",
    place: "stall 4",
    claims: ["menu says vegan"],
    finding: found("meat", "not smelled"),
    truth: { groups: { egg: "present" }, source: "label", knownAt: "2026-11-25T19:00:00Z", note: "" },
    outcome: "eaten",
  }),
  meal("m3", {
    at: "2026-11-26T12:00:00Z",
    dish: "plum soup",
    place: "Stall 40",
    finding: found("egg", "uncertain"),
    truth: { groups: { egg: "unknown" }, source: "other", knownAt: "2026-11-26T12:10:00Z", note: "" },
    reaction: { symptoms: ["Übelkeit"], severity: 1, note: "" },
    outcome: "sentBack",
  }),
  meal("m4", { dish: "rice", reaction: { symptoms: [], severity: 0, note: "nothing felt" } }),
];

describe("searching meals", () => {
  it.each<[string, MealFilter, string[]]>([
    ["nothing asked", {}, ["m1", "m2", "m3", "m4"]],
    ["a word without its umlaut", { text: "klosschen" }, ["m1"]],
    ["two words from two fields, in any order", { text: "VEGAN dumpl" }, ["m2"]],
    ["words that never stand together", { text: "vegan soup" }, []],
    ["a symptom", { text: "ubelkeit" }, ["m3"]],
    ["blanks alone", { text: "   " }, ["m1", "m2", "m3", "m4"]],
    ["a group that was found or turned out", { group: "egg" }, ["m2", "m3"]],
    ["a word of a finding", { verdict: "uncertain" }, ["m3"]],
    ["a word said of a group", { group: "meat", verdict: "smelled" }, ["m1"]],
    ["a word said of another group", { group: "egg", verdict: "smelled" }, []],
    ["a place, whole, in any case", { place: "STALL 4 " }, ["m1", "m2"]],
    ["from a moment, included", { fromAt: "2026-11-26T12:00:00Z" }, ["m3"]],
    ["before a moment, not included", { beforeAt: "2026-11-26T12:00:00Z" }, ["m1", "m2", "m4"]],
    ["what became of it", { outcome: "sentBack" }, ["m3"]],
    ["what turned out", { truthKnown: true }, ["m2"]], // m3 only says unknown
    ["what has not turned out", { truthKnown: false }, ["m1", "m3", "m4"]],
    ["a reaction", { reaction: true }, ["m3"]], // m4 says that nothing was felt
    ["all at once", { text: "plum", group: "egg", verdict: "uncertain", reaction: true }, ["m3"]],
  ])("finds %s", (_what, filter, ids) => {
    expect(searchMeals(evening.map(indexMeal), filter).map((place) => evening[place]?.id)).toEqual(ids);
    expect(evening.filter(mealMatches(filter)).map(({ id }) => id)).toEqual(ids);
  });

  it("never finds more when more is asked", () => {
    const filters = fc.record(
      {
        text: fc.string({ maxLength: 2 }),
        group: fc.constantFrom("meat", "egg"),
        truthKnown: fc.boolean(),
        reaction: fc.boolean(),
        outcome: fc.constantFrom("eaten" as const, "sentBack" as const),
        beforeAt: fc.constant("2026-06-01T00:00:00Z"),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.array(anyMeal), filters, (meals, filter) => {
        const index = meals.map(indexMeal);
        const all = new Set(searchMeals(index, filter));
        for (const key of Object.keys(filter)) {
          const { [key as keyof typeof filter]: _left, ...wider } = filter;
          const more = new Set(searchMeals(index, wider));
          expect([...all].every((place) => more.has(place))).toBe(true);
        }
      }),
    );
  });

  it("finds every meal by its own dish", () => {
    fc.assert(
      fc.property(anyMeal, (one) => {
        expect(searchMeals([indexMeal(one)], { text: one.dish })).toEqual([0]);
      }),
    );
  });
});

it("folds case, accents and sharp s, and folding again changes nothing", () => {
  expect(foldText("Crème BRÛLÉE, Grießklößchen")).toBe("creme brulee, griessklosschen");
  fc.assert(
    fc.property(fc.string({ unit: "grapheme" }), (text) => {
      expect(foldText(foldText(text))).toBe(foldText(text));
    }),
  );
});

describe("meals by day", () => {
  it.each([
    // Offsets from the IANA time zone database: Berlin +1 h in November, Tokyo +9 h, Kiritimati +14 h.
    ["UTC", "2026-11-25"],
    ["Europe/Berlin", "2026-11-26"],
    ["America/New_York", "2026-11-25"],
    ["Asia/Tokyo", "2026-11-26"],
  ])("in %s, half past eleven at night UTC is on %s", (timeZone, day) => {
    expect(dayFormat(timeZone)(Date.UTC(2026, 10, 25, 23, 30))).toBe(day);
  });

  it("keeps the order, and a meal of a day that came before joins it", () => {
    const meals = ["2026-11-26T01:00:00Z", "2026-11-25T23:30:00Z", "2026-11-25T10:00:00Z"].map((at, i) => ({
      id: i,
      at,
    }));
    expect(groupByDay(meals, "Europe/Berlin")).toEqual([
      { day: "2026-11-26", meals: [meals[0], meals[1]] },
      { day: "2026-11-25", meals: [meals[2]] },
    ]);
  });

  it("gives a day of the clock change both its hours", () => {
    // 25 October 2026: Berlin's clocks go back from 3 to 2 at 01:00 UTC; the day has 25 hours.
    const dayOf = dayFormat("Europe/Berlin");
    expect(dayOf(Date.UTC(2026, 9, 24, 22, 0))).toBe("2026-10-25");
    expect(dayOf(Date.UTC(2026, 9, 25, 22, 59))).toBe("2026-10-25");
    expect(dayOf(Date.UTC(2026, 9, 25, 23, 0))).toBe("2026-10-26");
  });

  it("loses no meal", () => {
    fc.assert(
      fc.property(fc.array(anyMeal), fc.constantFrom("UTC", "Pacific/Kiritimati"), (meals, timeZone) => {
        const days = groupByDay(meals, timeZone);
        expect(days.flatMap((day) => day.meals.map(({ id }) => id)).sort()).toEqual(
          meals.map(({ id }) => id).sort(),
        );
        expect(new Set(days.map(({ day }) => day)).size).toBe(days.length);
      }),
    );
  });

  it("knows no such time zone", () => {
    expect(() => groupByDay([], "Night/Market")).toThrow(RangeError);
  });
});
