import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  gatherRows,
  groupsIn,
  matchingMeals,
  NO_ROWS,
  placesIn,
  rowsOf,
  withMeal,
  withoutMeal,
} from "../../src/app/meals/mealRows.js";
import { narrowed } from "../../src/app/meals/mealsFilter.js";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { mealMatches } from "../../src/meals/mealSearch.js";
import { anyMeal } from "../meals/arbitraries.js";
import { found, plateFinding } from "../meals/findings.js";

const meal = (id: string, at: string, more: Partial<Meal> = {}): Meal => ({ ...newMeal(id, at), ...more });

/** The store's order: newest first, and among equals the greater id first. */
const inOrder = (meals: readonly Meal[]): Meal[] =>
  [...meals].sort(
    (left, right) => Date.parse(right.at) - Date.parse(left.at) || (left.id < right.id ? 1 : -1),
  );
const ids = (meals: readonly Meal[]): string[] => meals.map(({ id }) => id);
const someMeals = fc.uniqueArray(anyMeal, { selector: ({ id }) => id, maxLength: 12 });

describe("rows of meals", () => {
  it("come to the same whether read at once, page by page, or meal by meal in any order", () => {
    fc.assert(
      fc.property(someMeals, fc.nat(12), (meals, cut) => {
        const ordered = inOrder(meals);
        const atOnce = rowsOf(ordered);
        const gatherer = gatherRows();
        gatherer.add(ordered.slice(0, cut));
        gatherer.rows(); // looking at them in between changes nothing
        gatherer.add(ordered.slice(cut));
        expect(gatherer.rows()).toEqual(atOnce);
        expect(meals.reduce(withMeal, NO_ROWS)).toEqual(atOnce);
      }),
    );
  });

  it("take a changed meal to its new time, and lose a deleted one", () => {
    const rows = rowsOf([meal("b", "2026-11-25T19:00:00Z"), meal("a", "2026-11-25T18:00:00Z")]);
    const moved = withMeal(rows, meal("b", "2026-11-25T17:00:00Z", { dish: "lentil dumplings" }));
    expect(ids(moved.meals)).toEqual(["a", "b"]);
    expect(moved.meals[1]?.dish).toBe("lentil dumplings");
    expect(withoutMeal(moved, "a")).toEqual(
      rowsOf([meal("b", "2026-11-25T17:00:00Z", { dish: "lentil dumplings" })]),
    );
    expect(withoutMeal(moved, "c")).toEqual(moved);
  });

  it("let through what each meal alone would be let through by", () => {
    const text = fc.constantFrom("", "a", " ", "stall");
    fc.assert(
      fc.property(someMeals, text, fc.boolean(), (meals, wanted, truthKnown) => {
        const filter = { text: wanted, truthKnown };
        const rows = rowsOf(inOrder(meals));
        expect(ids(matchingMeals(rows, filter))).toEqual(ids(inOrder(meals).filter(mealMatches(filter))));
        expect(matchingMeals(rows, { text: "" })).toBe(rows.meals);
      }),
    );
  });

  it("are found by words that the list itself does not show", () => {
    const rows = rowsOf([
      meal("a", "2026-11-25T18:00:00Z", { note: "the cook hesitated", claims: ["vegan"] }),
    ]);
    expect(ids(matchingMeals(rows, { text: "hesitated vegan" }))).toEqual(["a"]);
    expect(rows.meals[0]?.note).toBe("");
  });

  it("carry the words of a finding, not the megabytes of reasons and evidence behind them", () => {
    const [row] = rowsOf([meal("a", "2026-11-25T18:00:00Z", { finding: plateFinding })]).meals;
    expect(row?.finding?.groups.map(({ group, verdict }) => [group, verdict])).toEqual([
      ["meat", "uncertain"],
    ]);
    expect(row?.finding?.groups[0]).toMatchObject({ reasons: [], basis: null });
  });

  it("name the groups of findings and truths, and each place once in its latest spelling", () => {
    const rows = rowsOf([
      meal("c", "2026-11-25T20:00:00Z", { place: "Stall 4 ", finding: found("meat", "smelled") }),
      meal("b", "2026-11-25T19:00:00Z", { place: "" }),
      meal("a", "2026-11-25T18:00:00Z", {
        place: "stall 4",
        truth: { groups: { egg: "absent" }, source: "label", knownAt: "2026-11-25T18:30:00Z", note: "" },
      }),
    ]);
    expect(groupsIn(rows)).toEqual(["egg", "meat"]);
    expect(placesIn(rows)).toEqual(["Stall 4"]);
  });
});

describe("a filter", () => {
  it("takes one choice at a time, and gives it back at “any”", () => {
    const meat = narrowed({ text: "broth" }, "group", "meat");
    const uncertain = narrowed(meat, "verdict", "uncertain");
    const known = narrowed(uncertain, "truth", "known");
    expect(known).toEqual({ text: "broth", group: "meat", verdict: "uncertain", truthKnown: true });
    expect(narrowed(known, "truth", "open")).toMatchObject({ truthKnown: false });
    expect(narrowed(narrowed(narrowed(known, "truth", "any"), "verdict", "any"), "group", "any")).toEqual({
      text: "broth",
    });
  });

  it("does not take a word for a finding that is none", () => {
    expect(narrowed({ verdict: "smelled" }, "verdict", "safe")).toEqual({});
  });
});
