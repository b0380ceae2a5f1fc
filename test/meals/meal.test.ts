import fc from "fast-check";
import { describe, expect, expectTypeOf, it } from "vitest";
import type { PlateFinding } from "../../src/finding/finding.js";
import type { FindingSnapshot } from "../../src/meals/findingSnapshot.js";
import { newMeal } from "../../src/meals/meal.js";
import { parseMeal } from "../../src/meals/parseMeal.js";
import { anyMeal } from "./arbitraries.js";
import { plateFinding } from "./findings.js";

it("keeps any finding as it is: the shape written down in meals/ takes what finding/ gives", () => {
  expectTypeOf<PlateFinding>().toExtend<FindingSnapshot>();
  expectTypeOf<PlateFinding["groups"][number]["verdict"]>().toEqualTypeOf<
    FindingSnapshot["groups"][number]["verdict"]
  >();
  const finding: FindingSnapshot = plateFinding;
  const parsed = parseMeal({ ...newMeal("m1", "2026-11-25T18:30:00Z"), finding });
  expect(parsed).toEqual({ ok: true, value: { ...newMeal("m1", "2026-11-25T18:30:00Z"), finding } });
});

describe("checking a meal", () => {
  it("lets every sound meal through unchanged, also as JSON", () => {
    fc.assert(
      fc.property(anyMeal, (meal) => {
        expect(parseMeal(meal)).toEqual({ ok: true, value: meal });
        expect(parseMeal(JSON.parse(JSON.stringify(meal)))).toEqual({ ok: true, value: meal });
      }),
    );
  });

  it("keeps unknown keys on every level", () => {
    const meal = {
      ...newMeal("m1", "2026-11-25T18:30:00Z"),
      table: 7,
      truth: { groups: {}, source: "label", knownAt: "2026-11-25T19:00:00Z", note: "", seenBy: "me" },
      cautions: [{ id: "c1", text: "ask about the stock", level: 2 }],
    };
    expect(parseMeal(meal)).toEqual({ ok: true, value: meal });
  });

  it.each([
    ["no meal at all", null, ""],
    ["another format", { format: "nidor-meal/2" }, "format"],
    ["no id", { id: "" }, "id"],
    ["a day that does not exist", { at: "2026-13-45T18:30:00Z" }, "at"],
    ["a date without its zone", { at: "2026-11-25T18:30:00" }, "at"],
    ["an outcome that nobody knows", { outcome: "devoured" }, "outcome"],
    ["a severity beyond severe", { reaction: { symptoms: [], severity: 4, note: "" } }, "reaction.severity"],
    [
      "an onset before the meal",
      { reaction: { onsetMs: -1, symptoms: [], severity: 1, note: "" } },
      "reaction.onsetMs",
    ],
    [
      "a truth without its source",
      { truth: { groups: {}, knownAt: "2026-11-25T18:30:00Z", note: "" } },
      "truth.source",
    ],
    ["a note as long as a book", { note: "x".repeat(20_001) }, "note"],
    [
      "a fourth word for a finding",
      { finding: { ...plateFinding, groups: [{ ...plateFinding.groups[0], verdict: "clear" }] } },
      "finding.groups.0.verdict",
    ],
    [
      "a probability in per cent",
      { finding: { ...plateFinding, groups: [{ ...plateFinding.groups[0], probability: 93 }] } },
      "finding.groups.0.probability",
    ],
  ])("refuses %s, and names the field", (_what, fault, field) => {
    const value = fault === null ? null : { ...newMeal("m1", "2026-11-25T18:30:00Z"), ...fault };
    expect(parseMeal(value)).toMatchObject({ ok: false, error: { field } });
  });
});
