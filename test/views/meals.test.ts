import { expect, it } from "vitest";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { claimsOf } from "../../src/views/mealFormView.js";
import { mealDaysView } from "../../src/views/mealDaysView.js";
import { mealDetailView, type SampleState } from "../../src/views/mealDetailView.js";
import { mealsListView, type MealsListState } from "../../src/views/mealsListView.js";
import { onsetId, ONSETS, reactionFormView } from "../../src/views/reactionFormView.js";
import { FULL_MEAL, MEALS } from "../browser/gallery/fixtures/meals.js";
import { ENGLISH, NOW_MS } from "../browser/gallery/fixtures/words.js";

const state = (rest: Partial<MealsListState>): MealsListState => ({
  matching: MEALS.length,
  total: MEALS.length,
  filter: {},
  groups: [],
  places: [],
  days: { from: "", upto: "" },
  daysFault: null,
  setAside: 0,
  ...rest,
});

const daysOf = (matching: readonly Meal[]) =>
  mealDaysView({ matching, shown: 50, practice: new Set(), nowMs: NOW_MS }, ENGLISH);

it("heads the days as today, yesterday and by date, where the person is", () => {
  const headings = daysOf(MEALS).days.map(({ heading }) => heading);
  expect(headings).toEqual(["Today", "Yesterday", expect.stringContaining("20 November 2026")]);
});

it("words only what is shown, so that ten thousand meals cost no more than fifty", () => {
  let read = 0;
  const many = Array.from({ length: 10_000 }, (_, i): Meal =>
    Object.defineProperty({ ...newMeal(`m${i}`, "2026-11-25T12:00:00Z") }, "dish", {
      get: () => {
        read += 1;
        return "Soup";
      },
    }),
  );
  const view = daysOf(many);
  expect(view.days.flatMap(({ meals }) => meals)).toHaveLength(50);
  expect(read).toBeLessThanOrEqual(100);
  expect(view.more).not.toBeNull();
});

it("teaches when there is nothing yet, and tells nothing found from nothing there", () => {
  expect(mealsListView(state({ matching: 0, total: 0 }), ENGLISH).empty).not.toBeNull();
  const searched = mealsListView(state({ matching: 0, filter: { text: "x" } }), ENGLISH);
  expect(searched.empty).toBeNull();
  expect(searched.noMatch).toBe("No meal matches.");
  expect(searched.filters?.clear).not.toBeNull();
});

it("sets the finding against the truth, group by group", () => {
  const { lines } = mealDetailView(
    {
      meal: FULL_MEAL,
      allergyGroups: [],
      sample: "none",
      nowMs: NOW_MS,
      practice: false,
      suggestions: [],
    },
    ENGLISH,
  ).truth;
  expect(lines).toContain("The finding matched for meat and fish.");
  expect(lines).toContain("The finding had been uncertain for shellfish.");
});

it("offers a sniff as a sample only once the truth is known, and only once", () => {
  const sampleOf = (meal: Meal, sample: SampleState) =>
    mealDetailView(
      { meal, allergyGroups: [], sample, nowMs: NOW_MS, practice: false, suggestions: [] },
      ENGLISH,
    ).sample;
  expect(sampleOf(FULL_MEAL, "none")?.action).not.toBeNull();
  for (const sample of ["keeping", "kept"] as const)
    expect(sampleOf(FULL_MEAL, sample)).toMatchObject({ reason: null, action: null });
  expect(sampleOf({ ...FULL_MEAL, truth: null }, "none")).toBeNull();
});

it("shows the emergency line on every reaction form, and presses it when breathing or swelling is ticked", () => {
  // The emergency line of the design: difficulty breathing, swelling: prescribed medicine, local emergency number.
  const draft = { severity: 0, onset: "unknown", symptoms: [], own: "", note: "" } as const;
  const calm = reactionFormView(draft, ENGLISH).emergency;
  expect(calm.text).toContain("call the local emergency number");
  expect(calm.urgent).toBe(false);
  for (const symptom of ["breathing", "swelling", "faint"])
    expect(reactionFormView({ ...draft, symptoms: [symptom] }, ENGLISH).emergency.urgent).toBe(true);
});

it("reads back each onset that the form can keep", () => {
  for (const id of Object.keys(ONSETS) as (keyof typeof ONSETS)[]) expect(onsetId(ONSETS[id])).toBe(id);
  expect(onsetId(60_000)).toBe("minutes");
});

it("takes one claim a line and drops empty ones", () => {
  expect(claimsOf({ claims: " menu says vegan \n\n no egg" })).toEqual(["menu says vegan", "no egg"]);
});
