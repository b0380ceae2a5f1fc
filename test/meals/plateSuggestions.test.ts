/** What would help the nose most. Counted by hand; the numbers of plates are those of Clopper and Pearson (1934). */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import {
  plateSuggestions,
  type CountedSample,
  type SuggestionState,
} from "../../src/meals/plateSuggestions.js";
import { anyMeal } from "./arbitraries.js";
import { found } from "./findings.js";

const EMPTY: SuggestionState = {
  samples: [],
  meals: [],
  groups: ["meat"],
  shown: [],
  acceptedMissRate: 0.05,
  leastAbsent: 19,
};

const samples = (truth: "present" | "absent", count: number, occasions = 5): CountedSample[] =>
  Array.from({ length: count }, (_, i) => ({
    sniffId: `${truth}${i}`,
    plate: `${truth}${i}`,
    occasion: `day ${i % occasions}`,
    dish: "broth",
    groups: { meat: truth },
  }));

const ENOUGH = [...samples("present", 59), ...samples("absent", 19)];

const meal = (id: string, more: Partial<Meal>): Meal => ({
  ...newMeal(id, "2026-11-20T18:00:00Z"),
  sniffId: `sniff of ${id}`,
  ...more,
});
const truth = (meat: "present" | "absent") =>
  ({ groups: { meat }, source: "kitchen", knownAt: "2026-11-20T19:00:00Z", note: "" }) as const;

const of = (state: Partial<SuggestionState>) => plateSuggestions({ ...EMPTY, ...state });

describe("plates of a group", () => {
  it("begins with plates with the group, then without: 59 show 5 % with none missed", () => {
    // Source: 1 - 0.05^(1/59) = 0.0495, 1 - 0.05^(1/58) = 0.0503 (design.md, section 3).
    expect(of({})).toEqual([
      { kind: "present", group: "meat", have: 0, more: 59 },
      { kind: "absent", group: "meat", have: 0, more: 19 },
    ]);
  });

  it("asks for nothing where nothing is missing", () => {
    expect(of({ samples: ENOUGH })).toEqual([]);
  });

  it("puts the scarcer group first, and counts a plate that was sniffed twice once", () => {
    const twice = samples("present", 30).flatMap((one) => [one, { ...one, sniffId: `${one.sniffId}b` }]);
    const suggested = of({ groups: ["fish", "meat"], samples: [...twice, ...samples("absent", 19)] });
    expect(suggested.slice(0, 2)).toEqual([
      { kind: "present", group: "fish", have: 0, more: 59 },
      { kind: "absent", group: "fish", have: 0, more: 19 },
    ]);
    expect(of({ samples: [...twice, ...samples("absent", 19)] })).toEqual([
      { kind: "present", group: "meat", have: 30, more: 29 },
    ]);
  });
});

describe("a miss rate that is not shown", () => {
  it("takes 93 plates for one miss at 5 %", () => {
    // Source: the least n with P(X <= 1 | n, 0.05) <= 0.05 is 93, a tabled attributes sampling size (c = 1, 95/95).
    const suggested = of({ samples: ENOUGH, shown: [{ group: "meat", misses: 1, trials: 59 }] });
    expect(suggested).toEqual([{ kind: "missRate", group: "meat", misses: 1, trials: 59, more: 34 }]);
  });

  it("is silent without a miss, and for a group that nobody judges", () => {
    expect(of({ samples: ENOUGH, shown: [{ group: "meat", misses: 0, trials: 59 }] })).toEqual([]);
    expect(of({ samples: ENOUGH, shown: [{ group: "egg", misses: 3, trials: 59 }] })).toEqual([]);
  });
});

describe("meals", () => {
  it("are kept first where the nose was wrong, then where it was open, then where it was right", () => {
    const right = meal("right", { finding: found("meat", "smelled", 0.9), truth: truth("present") });
    const open = meal("open", { finding: found("meat", "uncertain", 0.5), truth: truth("present") });
    const wrong = meal("wrong", { finding: found("meat", "not smelled", 0.1), truth: truth("present") });
    const suggested = of({ samples: ENOUGH, meals: [right, open, wrong] });
    expect(suggested.filter(({ kind }) => kind === "keepMeal")).toMatchObject([
      { mealId: "wrong", worth: "missed" },
      { mealId: "open", worth: "uncertain" },
    ]);
    expect(of({ samples: ENOUGH, meals: [right] })).toMatchObject([{ mealId: "right", worth: "agreed" }]);
  });

  it("that are samples already are not suggested again", () => {
    const open = meal("open", { finding: found("meat", "uncertain", 0.5), truth: truth("present") });
    const kept: CountedSample = { ...samples("present", 1)[0]!, sniffId: "sniff of open", plate: "x" };
    expect(of({ samples: [...ENOUGH, kept], meals: [open] })).toEqual([]);
  });

  it("are asked about nearest to even odds first, and not at all where the answer would hardly surprise", () => {
    const ask = (id: string, probability: number) =>
      meal(id, { finding: found("meat", "uncertain", probability) });
    const suggested = of({ samples: ENOUGH, meals: [ask("far", 0.95), ask("near", 0.6), ask("even", 0.48)] });
    expect(suggested).toMatchObject([
      { kind: "askMeal", mealId: "even", probability: 0.48 },
      { kind: "askMeal", mealId: "near" },
    ]);
  });

  it("of a dish eaten twice and never taught make the dish worth a sample", () => {
    const eaten = (id: string, dish: string) => ({ ...newMeal(id, "2026-11-20T18:00:00Z"), dish });
    const meals = [
      eaten("a", "Lentil pot"),
      eaten("b", "lentil pot "),
      eaten("c", "Broth"),
      eaten("d", "broth"),
    ];
    expect(of({ samples: ENOUGH, meals: [...meals, eaten("e", "Rice")] })).toEqual([
      { kind: "newDish", dish: "Lentil pot", meals: 2 },
    ]);
  });
});

it("asks for another sitting where all samples are of one", () => {
  const oneDay = [...samples("present", 59, 1), ...samples("absent", 19, 1)];
  expect(of({ samples: oneDay })).toEqual([{ kind: "occasions", have: 1, more: 2 }]);
});

it("tells no more than two of a kind, and each suggestion once, whatever the meals", () => {
  fc.assert(
    fc.property(fc.array(anyMeal, { maxLength: 12 }), (meals) => {
      const suggested = of({ meals, groups: ["meat", "fish", "egg"] });
      for (const { kind } of suggested)
        expect(suggested.filter((one) => one.kind === kind).length).toBeLessThanOrEqual(2);
      expect(new Set(suggested.map((one) => JSON.stringify(one))).size).toBe(suggested.length);
    }),
  );
});
