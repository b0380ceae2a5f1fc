import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import { checkedNose } from "../../src/teaching/checkSamples.js";
import { teachNose, type TeachOptions } from "../../src/teaching/teachNose.js";
import { syntheticSniffs } from "./syntheticSniffs.js";
import { useWasm } from "./useBackend.js";

const OPTIONS: TeachOptions = {
  seed: 1,
  id: "n",
  name: "n",
  taughtAt: "2026-11-25T18:30:00Z",
  withoutNets: true,
};
const SNIFFS = syntheticSniffs({ plates: 48, seed: 1, strength: 4, groups: ["meat"] });

async function taught(sniffs = SNIFFS) {
  await useWasm();
  const made = await teachNose(sniffs, OPTIONS);
  if (!made.ok) throw new Error(made.error.kind);
  return made.value.nose;
}

it("keeps leak checks, learning curve and the split by occasion with the nose, through its file", async () => {
  const nose = await checkedNose(await taught(), SNIFFS, OPTIONS);
  const { sampleChecks, byOccasion } = nose.report;
  // Clock and clean air are in the synthetic sniffs, air readings are not.
  expect(sampleChecks?.leaks.checks.map(({ kind }) => kind)).toEqual(["cleanAir", "clock"]);
  expect(sampleChecks?.leaks.missing).toEqual(["airReadings"]);
  expect(sampleChecks?.learningCurve).toHaveLength(4);
  // 48 plates on evenings of eight.
  expect(byOccasion?.occasions).toBe(6);
  expect(byOccasion?.folds).toBe(6);
  const tried = byOccasion?.groups[0];
  expect((tried?.sensitivity?.trials ?? 0) + (tried?.specificity?.trials ?? 0)).toBe(48);
  expect(parseNose(serialiseNose(nose))).toEqual({ ok: true, value: nose });
});

it("finds the occasions on which every plate had the group, and says which", async () => {
  const inTurn = SNIFFS.map((sniff) => ({ ...sniff, occasion: `with ${sniff.groups["meat"]}` }));
  const nose = await checkedNose(await taught(inTurn), inTurn, OPTIONS);
  expect(nose.report.sampleChecks?.leaks.oneSided).toEqual([
    { group: "meat", occasions: ["with absent", "with present"], of: 2 },
  ]);
});

it("stops where it is told to and keeps the nose", async () => {
  const nose = await taught();
  expect(await checkedNose(nose, SNIFFS, { ...OPTIONS, isCancelled: () => true })).toBe(nose);
  let asked = 0;
  const later = await checkedNose(nose, SNIFFS, { ...OPTIONS, isCancelled: () => (asked += 1) > 2 });
  expect(later.report.sampleChecks).toBeDefined();
  expect(later.report.byOccasion).toBeUndefined();
});

it("opens a nose file from before there were such checks", () => {
  // Taught on 24 synthetic plates at commit 0bc333c, before the fields existed.
  const text = readFileSync("test/fixtures/noses/beforeSampleChecks.nose.json", "utf8");
  expect(text).not.toContain("sampleChecks");
  const read = parseNose(text);
  expect(read.ok && read.value.report.sampleChecks).toBeUndefined();
  expect(read.ok && serialiseNose(read.value)).toBe(text);
});
