import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { GroupTruth } from "../../src/kernel/groups.js";
import { fieldRecords } from "../../src/meals/fieldRecord.js";
import type { SnapshotVerdict } from "../../src/meals/findingSnapshot.js";
import { newMeal, type Meal } from "../../src/meals/meal.js";
import { reviewMeals, sampleCandidates } from "../../src/meals/review.js";
import { surprisesOf, surprisingNames } from "../../src/meals/surprises.js";
import { anyMeal } from "./arbitraries.js";
import { found } from "./findings.js";

let counter = 0;
const nextAt = () => new Date(Date.UTC(2026, 10, 25, 18, (counter += 1))).toISOString();

const plate = (
  verdict: SnapshotVerdict,
  truth: GroupTruth | null,
  more: Partial<Meal> = {},
  probability: number | null = null,
): Meal => {
  const at = nextAt();
  return {
    ...newMeal(`m${counter}`, at),
    finding: found("meat", verdict, probability),
    truth: truth === null ? null : { groups: { meat: truth }, source: "kitchen", knownAt: at, note: "" },
    ...more,
  };
};
const times = (count: number, make: () => Meal) => Array.from({ length: count }, make);

describe("findings against what the plates turned out to hold", () => {
  it("gives the exact interval of a published table", () => {
    // Source: Newcombe, Stat. Med. 17 (1998), 857-872, Table I: 81 of 263 and 15 of 148, Clopper-Pearson.
    const meals = [
      ...times(81, () => plate("smelled", "present")),
      ...times(263 - 81, () => plate("not smelled", "present")),
      ...times(15, () => plate("not smelled", "absent")),
      ...times(148 - 15, () => plate("smelled", "absent")),
    ];
    const [record] = fieldRecords(meals);
    expect(record?.sensitivity.interval.low).toBeCloseTo(0.2527, 4);
    expect(record?.sensitivity.interval.high).toBeCloseTo(0.3676, 4);
    expect(record?.specificity.interval.low).toBeCloseTo(0.0578, 4);
    expect(record?.specificity.interval.high).toBeCloseTo(0.1617, 4);
    expect(record?.sensitivity.share).toBeCloseTo(81 / 263, 12);
  });

  it("counts a small evening by hand", () => {
    const meals = [
      ...times(3, () => plate("smelled", "present")),
      plate("not smelled", "present"),
      ...times(2, () => plate("uncertain", "present")),
      plate("smelled", "absent"),
      ...times(4, () => plate("not smelled", "absent")),
      plate("not smelled", "unknown"),
      plate("uncertain", null),
    ];
    const [record, ...others] = fieldRecords(meals);
    expect(others).toEqual([]);
    expect(record).toMatchObject({
      group: "meat",
      said: { smelled: 4, "not smelled": 6, uncertain: 3 },
      whenPresent: { smelled: 3, "not smelled": 1, uncertain: 2 },
      whenAbsent: { smelled: 1, "not smelled": 4, uncertain: 0 },
      confirmed: { count: 11, of: 13 },
      sensitivity: { count: 3, of: 4, share: 0.75 },
      specificity: { count: 4, of: 5, share: 0.8 },
      reliability: null, // no probability was kept
    });
  });

  it("claims nothing where nothing is known", () => {
    const [record] = fieldRecords([plate("smelled", null)]);
    expect(record?.sensitivity).toEqual({ count: 0, of: 0, share: null, interval: { low: 0, high: 1 } });
    expect(fieldRecords([newMeal("m", "2026-11-25T18:30:00Z")])).toEqual([]);
  });

  it("gives the reliability of scikit-learn's own example, and its Brier score", () => {
    // Source of the data: scikit-learn, sklearn/calibration.py, docstring example of calibration_curve. Five bins
    // and the score are counted by hand: bins (0, 0.2], (0.2, 0.4], (0.4, 0.6], (0.6, 0.8], (0.8, 1].
    const predicted = [0.1, 0.2, 0.3, 0.4, 0.65, 0.7, 0.8, 0.9, 1];
    const happened = [0, 0, 0, 0, 1, 1, 1, 1, 1];
    const meals = predicted.map((p, i) =>
      plate("uncertain", happened[i] === 1 ? "present" : "absent", {}, p),
    );
    const { reliability } = fieldRecords([...meals, plate("smelled", null, {}, 0.99)])[0]!;
    expect(reliability?.plates).toBe(9);
    expect(reliability?.bins.map(({ count, observedFraction }) => [count, observedFraction])).toEqual([
      [2, 0],
      [2, 0],
      [3, 1],
      [2, 1],
    ]);
    // (0.01 + 0.04 + 0.09 + 0.16 + 0.1225 + 0.09 + 0.04 + 0.01 + 0) / 9
    expect(reliability?.brier).toBeCloseTo(0.5625 / 9, 12);
  });

  it("turns round when present and absent, smelled and not smelled change places", () => {
    const cases = fc.array(
      fc.tuple(
        fc.constantFrom<SnapshotVerdict>("smelled", "not smelled", "uncertain"),
        fc.constantFrom<GroupTruth>("present", "absent", "unknown"),
      ),
      { minLength: 1, maxLength: 30 },
    );
    const mirrorVerdict = {
      smelled: "not smelled",
      "not smelled": "smelled",
      uncertain: "uncertain",
    } as const;
    const mirrorTruth = { present: "absent", absent: "present", unknown: "unknown" } as const;
    fc.assert(
      fc.property(cases, (some) => {
        const [here] = fieldRecords(some.map(([verdict, truth]) => plate(verdict, truth)));
        const [mirrored] = fieldRecords(
          some.map(([verdict, truth]) => plate(mirrorVerdict[verdict], mirrorTruth[truth])),
        );
        expect(mirrored?.sensitivity).toEqual(here?.specificity);
        expect(mirrored?.confirmed).toEqual(here?.confirmed);
        const [shuffled] = fieldRecords(some.toReversed().map(([verdict, truth]) => plate(verdict, truth)));
        expect(shuffled).toEqual(here);
      }),
    );
  });
});

describe("surprises", () => {
  const vegan = (claim: string, group: string) => claim.includes("vegan") && group === "meat";

  it.each([
    ["smelled", "absent", [], ["smelledButAbsent"]],
    ["not smelled", "present", [], ["presentButNotSmelled"]],
    ["not smelled", "present", ["menu says vegan"], ["presentButNotSmelled", "presentAgainstClaim"]],
    ["smelled", "present", ["menu says vegan"], ["presentAgainstClaim"]],
    ["uncertain", "present", [], []],
    ["smelled", "present", [], []],
    ["not smelled", "absent", ["menu says vegan"], []],
    ["not smelled", "unknown", ["menu says vegan"], []],
  ] as const)("%s and %s, with claims %j: %j", (verdict, truth, claims, kinds) => {
    const meal = plate(verdict, truth, { claims: [...claims] });
    expect(surprisesOf(meal, vegan).map(({ kind }) => kind)).toEqual(kinds);
  });

  it("names the places with most surprising meals first, whatever their spelling", () => {
    const meals = [
      plate("smelled", "absent", { place: "Stall 4" }),
      plate("smelled", "present", { place: "stall 4 " }),
      plate("not smelled", "present", { place: "STALL 4" }),
      plate("not smelled", "present", { place: "Stall 9" }),
      plate("smelled", "present", { place: "Stall 2" }),
      plate("smelled", "absent", { place: "" }),
      plate("smelled", null, { place: "Stall 9" }),
    ];
    const places = surprisingNames(
      meals,
      ({ place }) => place,
      () => false,
    );
    expect(
      places.map(({ name, confirmedMeals, surprisingMeals }) => [name, confirmedMeals, surprisingMeals]),
    ).toEqual([
      ["STALL 4", 3, 2],
      ["Stall 9", 1, 1],
    ]);
  });
});

describe("the review as a whole", () => {
  it("leaves deleted meals out of everything", () => {
    const gone = { deletedAt: "2026-11-26T08:00:00Z", outcome: "eaten", place: "Stall 4" } as const;
    const review = reviewMeals(times(3, () => plate("smelled", "absent", gone)));
    expect(review).toMatchObject({ meals: 0, records: [], places: [], dishes: [], toAskAbout: [] });
    expect(review.reactionFoods.meals).toBe(0);
  });

  it("asks about meals with a finding or a claim and no truth, newest first", () => {
    const meals = [
      plate("smelled", null),
      plate("smelled", "unknown"),
      plate("smelled", "present"),
      { ...newMeal("plain", nextAt()) },
      { ...newMeal("claimed", nextAt()), claims: ["cook says no egg"] },
    ];
    const expected = ["claimed", meals[1]?.id, meals[0]?.id];
    expect(reviewMeals(meals).toAskAbout.map(({ id }) => id)).toEqual(expected);
  });

  it("changes nothing it is given and never fails on a sound meal", () => {
    fc.assert(
      fc.property(fc.array(anyMeal), (meals) => {
        const before = JSON.stringify(meals);
        const review = reviewMeals(meals);
        expect(JSON.stringify(meals)).toBe(before);
        expect(review.meals).toBe(meals.length);
      }),
    );
  });
});

it("offers as samples first the plates that the nose got wrong, then those that left it uncertain", () => {
  const wrong = plate("not smelled", "present", { sniffId: "s1" });
  const right = plate("smelled", "present", { sniffId: "s2" });
  const unsure = plate("uncertain", "absent", { sniffId: "s3" });
  const meals = [
    right,
    unsure,
    wrong,
    plate("smelled", null, { sniffId: "s4" }),
    plate("smelled", "present"),
    plate("smelled", "present", { sniffId: "s5" }),
    plate("smelled", "present", { sniffId: "s6", deletedAt: "2026-11-26T08:00:00Z" }),
  ];
  const ids = sampleCandidates(meals, new Set(["s5"])).map(({ sniffId }) => sniffId);
  expect(ids).toEqual(["s1", "s3", "s2"]);
});
