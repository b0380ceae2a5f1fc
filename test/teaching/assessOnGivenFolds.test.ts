/** Folds that were dealt elsewhere: the very splits of another tool, a split of its own for each group. */
import { describe, expect, it } from "vitest";
import { judgedSniff } from "../../src/finding/judgedSniff.js";
import { taughtShare } from "../../src/finding/withBelief.js";
import { assessOnGivenFolds, type GivenFolds } from "../../src/teaching/assessOnGivenFolds.js";
import type { AssessOptions } from "../../src/teaching/assessSamples.js";
import { summariseAssessment } from "../../src/teaching/summariseAssessment.js";
import { teachNose } from "../../src/teaching/teachNose.js";
import { syntheticSniffs } from "./syntheticSniffs.js";

const sniffs = syntheticSniffs({ plates: 32, seed: 4, strength: 4 });
const OPTIONS: AssessOptions = {
  split: "plate",
  folds: 5,
  seed: 7,
  acceptedMissRate: 0.1,
  withoutNets: true,
};
const dealt = (foldOf: (place: number) => number, plates = sniffs.length): ReadonlyMap<string, number> =>
  new Map(sniffs.slice(0, plates).map(({ id }, place) => [id, foldOf(place)]));
const halves = dealt((place) => (place < 16 ? 0 : 1));
const evenAndOdd = dealt((place) => place % 2);

async function assessed(folds: GivenFolds) {
  const done = await assessOnGivenFolds(sniffs, folds, OPTIONS);
  if (!done.ok) throw new Error(JSON.stringify(done.error));
  return done.value;
}

describe("an assessment on given folds", () => {
  it("each group's answers come from noses that were taught on the other folds of that group", async () => {
    const {
      sniffs: judged,
      taughtShares,
      prepared,
      rivals,
    } = await assessed(
      new Map([
        ["meat", halves],
        ["fish", evenAndOdd],
      ]),
    );
    for (const [group, isTaught, held] of [
      ["meat", (place: number) => place >= 16, 3],
      ["fish", (place: number) => place % 2 === 1, 10],
    ] as const) {
      const taught = await teachNose(
        sniffs.filter((_, place) => isTaught(place)),
        {
          seed: OPTIONS.seed + 1,
          id: "by-hand",
          name: "by hand",
          taughtAt: "2026-01-01T00:00:00Z",
          groups: ["fish", "meat"],
          withoutNets: true,
          withRivals: true,
        },
      );
      if (!taught.ok) throw new Error(taught.error.kind);
      const byHand = judgedSniff(taught.value.nose, sniffs[held]!, [group], 0.1);
      expect(judged[held]!.groups[group]).toEqual(byHand.groups[group]);
      const place = prepared.groups.indexOf(group);
      const own = taught.value.nose.groups.find(({ name }) => name === group)!;
      expect(taughtShares[held]![place]).toBe(taughtShare(own));
      const trees = judgedSniff(taught.value.rivals.trees!, sniffs[held]!, [group], 0.1);
      expect(rivals["trees"]![held]![place]).toBe(trees.groups[group]!.probability);
    }
  });

  it("a sniff without a fold is neither taught nor judged, and the scores leave it out", async () => {
    const folds = new Map([["meat", dealt((place) => place % 2, 24)]]);
    const assessment = await assessed(folds);
    const asked = assessment.sniffs.map(({ groups }) => groups["meat"]!.truth !== "unknown");
    expect(asked).toEqual(sniffs.map((_, place) => place < 24));
    const summary = summariseAssessment(assessment);
    expect(summary.groups.map(({ group, scores }) => [group, scores?.sniffs])).toEqual([["meat", 24]]);
    const without = await assessOnGivenFolds(sniffs.slice(0, 24), folds, OPTIONS);
    expect(without.ok && without.value.sniffs).toEqual(assessment.sniffs.slice(0, 24));
  });

  it("the plain models answer on the same folds as the nose", async () => {
    const assessment = await assessed(new Map([["fish", evenAndOdd]]));
    expect(assessment.rivals["trees"]!.flat().every((one) => one !== null && one > 0 && one < 1)).toBe(true);
    expect(assessment.rivals["nets"]!.flat().every((one) => one === null)).toBe(true);
    expect(summariseAssessment(assessment).rivals.map(({ name }) => name)).toContain("trees");
    expect(assessment.taughtShares.flat().every((share) => share > 0 && share < 1)).toBe(true);
  });

  it.each([
    [
      "cut through an evening that is to be held out whole",
      ["meat"],
      evenAndOdd,
      "occasion evening-0 lies in folds",
    ],
    ["name a sniff that is not here", ["meat"], new Map([...halves, ["nobody", 1]]), "not here: nobody"],
    [
      "are of a group that no sniff speaks of",
      ["meat", "nut"],
      halves,
      "no sniff says whether nut was present",
    ],
    ["are one fold only", ["meat"], dealt(() => 3), "needs two occasions or more"],
  ])("are refused if they %s", async (_, groups, folds, words) => {
    const options = { ...OPTIONS, split: "occasion" } as const;
    const done = await assessOnGivenFolds(sniffs, new Map(groups.map((group) => [group, folds])), options);
    expect(done).toMatchObject({ ok: false, error: { detail: expect.stringContaining(words) as string } });
  });
});
