import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { RECIPES } from "../../src/features/recipe.js";
import type { Sniff } from "../../src/sniff/sniff.js";
import { readSniffFile } from "../../src/sniff/sniffFile.js";
import { leakChecks } from "../../src/teaching/leakChecks.js";
import { leaveFoodOut } from "../../src/teaching/leaveFoodOut.js";
import { learningCurve } from "../../src/teaching/learningCurve.js";
import { prepareSamples } from "../../src/teaching/prepareSamples.js";
import { syntheticSniffs } from "./syntheticSniffs.js";

const prepared = (sniffs: readonly Sniff[]) => {
  const made = prepareSamples(sniffs);
  if (!made.ok) throw new Error(made.error.kind);
  return made.value;
};
const read = (path: string) => readSniffFile(readFileSync(path, "utf8")).sniffs;
const leaking = (sniffs: readonly Sniff[]) =>
  leakChecks(prepared(sniffs), 1)
    .checks.filter(({ leaks }) => leaks)
    .map(({ kind }) => kind);

describe("leak checks", () => {
  it("are silent on samples in random order", () => {
    for (let seed = 1; seed <= 5; seed += 1)
      expect(leaking(syntheticSniffs({ plates: 80, seed }))).toEqual([]);
  });

  it("are silent on the demo samples, whose order the virtual night market drew at random", () => {
    expect(leaking(read("models/demo.sniffs.jsonl"))).toEqual([]);
  });

  it("find a baseline that shifts with the group", () => {
    expect(leaking(syntheticSniffs({ plates: 80, seed: 3, baselineLeak: 0.15 }))).toContain("cleanAir");
  });

  it("find samples gathered group by group by their clock, and name the occasions", () => {
    const byGroup = [...syntheticSniffs({ plates: 80, seed: 4 })].sort((a, b) =>
      a.groups["meat"]! < b.groups["meat"]! ? -1 : a.groups["meat"]! > b.groups["meat"]! ? 1 : 0,
    );
    const inTurn = byGroup.map((sniff, i) => ({
      ...sniff,
      takenAt: new Date(Date.UTC(2026, 0, 1 + Math.floor(i / 8), 18, i % 8)).toISOString(),
      occasion: `evening-${Math.floor(i / 8)}`,
    }));
    expect(leaking(inTurn)).toContain("clock");
    const meat = leakChecks(prepared(inTurn), 1).oneSided.find(({ group }) => group === "meat")!;
    expect(meat.occasions.length).toBeGreaterThanOrEqual(meat.of - 1);
  });

  const openData = (name: string) => `../shared/open-data/${name}.sniffs.jsonl`;
  it.skipIf(!existsSync(openData("smellnet50")))("flag smellnet50: foods recorded one after another", () => {
    // Source: Feng and others 2025, arXiv:2506.00239; the rooms' air tells the foods apart.
    expect(leaking(read(openData("smellnet50")))).toContain("airReadings");
  });
  it.skipIf(!existsSync(openData("beef36h")))("flag beef36h: the grade goes with the hours", () => {
    // Source: Wijaya and others 2018, Data in Brief 21, 2414-2420.
    expect(leaking(read(openData("beef36h")))).toContain("airReadings");
  });
});

it("more plates make a better nose: the learning curve falls", () => {
  const curve = learningCurve(
    prepared(syntheticSniffs({ plates: 120, seed: 2, strength: 3 })),
    RECIPES[0]!,
    1,
    1,
  );
  expect(curve.map(({ plates }) => plates)).toEqual([24, 48, 72, 96]);
  expect(curve.at(-1)!.logLoss).toBeLessThan(curve[0]!.logLoss);
});

it("food that was never taught looks strange; AUROC on the demo samples is over 0.75", () => {
  const report = leaveFoodOut(prepared(read("models/demo.sniffs.jsonl")), RECIPES[0]!, 1, 1)!;
  expect(report.auroc!).toBeGreaterThan(0.75);
  expect(report.unknownFlagged).toBeGreaterThan(0.15);
});
