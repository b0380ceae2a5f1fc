/** A taught nose on another unit off the same line: what the map brings, and what the moved nose may still not say. */
import { expect, it } from "vitest";
import { findPlate } from "../../src/finding/findPlate.js";
import { answerSniff } from "../../src/nose/answer.js";
import { parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import type { Nose } from "../../src/nose/nose.js";
import { tellTaught } from "../../src/nose/tellTaught.js";
import { transferNose, type Transferred } from "../../src/transfer/transferNose.js";
import { DEMO_NOSE, SECOND_ID, servedToTwo, TAUGHT_NOW, type Served } from "./twoSniffers.js";

const OPTIONS = {
  id: "moved",
  name: "Moved nose",
  transferredAt: "2026-12-01T20:00:00Z",
  sniffer: { id: SECOND_ID, channels: DEMO_NOSE.sniffer.channels },
};
const move = (served: Served) => transferNose(DEMO_NOSE, servedToTwo(served), OPTIONS);
const REQUEST = { groups: ["meat"], acceptedMissRate: 0.1, allergyGroups: [] };

/** Mean over the groups and both truths of the share of plates that were right. */
function balancedAccuracy({ comparison }: Transferred, which: "older" | "newer"): number {
  const shares = comparison.flatMap(({ found, quiet }) => [found[which], quiet[which]]);
  return shares.reduce((sum, { events, trials }) => sum + events / trials, 0) / shares.length;
}

const SEEDS = [1, 2, 3, 4, 5, 6];
const MOVED = SEEDS.map((seed) => move({ onFirst: 16, onSecond: 40, seed }));

it("wins back much of what another unit costs, over several units (checks MX-09 and T-MX-2)", () => {
  const good = MOVED.flatMap((one) => (one.ok ? [one.value] : []));
  expect(good.length).toBeGreaterThanOrEqual(SEEDS.length - 1);
  const before = good.map((one) => balancedAccuracy(one, "older"));
  const after = good.map((one) => balancedAccuracy(one, "newer"));
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  expect(mean(after) - mean(before)).toBeGreaterThan(0.04);
  after.forEach((value, i) => expect(value).toBeGreaterThan(before[i]! - 0.03));
});

it.each(MOVED.flatMap((one, i) => (one.ok ? [[SEEDS[i]!, one.value] as const] : [])))(
  "the moved nose of unit %s states what was shown with that unit, and no more",
  (_seed, { nose }) => {
    for (const [place, group] of nose.groups.entries()) {
      expect(group.truth.length).toBeLessThanOrEqual(40);
      expect(nose.report.groups[place]!.platesPresent).toBe(group.truth.filter((one) => one === 1).length);
    }
    const [plate] = servedToTwo({ onFirst: 0, onSecond: 1, seed: 77 });
    const { basis, reasons } = findPlate(nose, plate!, REQUEST).groups[0]!;
    const taught = findPlate(DEMO_NOSE, plate!, REQUEST).groups[0]!;
    // 40 plates at most, about half with meat: fewer than the 29 that show one miss in ten.
    expect(basis!.heldOutPresent).toBeLessThan(29);
    expect(basis!.missRateUpper).toBeGreaterThanOrEqual(taught.basis!.missRateUpper);
    expect(basis!.missRateUpper).toBeGreaterThan(0.1);
    expect(reasons.map(({ kind }) => kind)).not.toContain("otherSniffer");
    expect(taught.reasons.map(({ kind }) => kind)).toContain("otherSniffer");
  },
);

const FIRST = MOVED.find((one) => one.ok);
const NOSE = (FIRST as { value: Transferred }).value.nose;

it("keeps where it comes from, through its file", () => {
  expect(NOSE.transfer?.of).toEqual({
    id: "demo",
    name: DEMO_NOSE.name,
    taughtAt: DEMO_NOSE.taughtAt,
    snifferId: DEMO_NOSE.sniffer.id,
  });
  expect(parseNose(serialiseNose(NOSE))).toEqual({ ok: true, value: NOSE });
});

it("has a format of its own, so that a reader without the map refuses it", () => {
  expect(NOSE.format).toBe("nidor-nose/2");
  const posing = parseNose(serialiseNose(NOSE).replace("nidor-nose/2", "nidor-nose/1"));
  expect(posing).toMatchObject({ ok: false, error: { kind: "badField", field: "transfer" } });
  const mapless: Nose = { ...NOSE, transfer: undefined };
  expect(parseNose(serialiseNose(mapless)).ok).toBe(false);
  const cut: Nose = {
    ...NOSE,
    transfer: { ...NOSE.transfer!, map: { ...NOSE.transfer!.map, offset: new Float32Array(3) } },
  };
  expect(parseNose(serialiseNose(cut)).ok).toBe(false);
});

it("never takes a taught plate for evidence", () => {
  const taughtPlate = DEMO_NOSE.plateNames![0]!;
  const served = servedToTwo({ onFirst: 16, onSecond: 17, seed: 5 }).map((sniff) =>
    sniff.plate.endsWith("plate-0") ? { ...sniff, plate: taughtPlate } : sniff,
  );
  const one = transferNose(DEMO_NOSE, served, OPTIONS);
  if (!one.ok) throw new Error(one.error.kind);
  expect(one.value.nose.transfer?.pairs).toBe(16);
  expect(one.value.nose.groups[0]!.truth).toHaveLength(16);
  expect(tellTaught(one.value.nose)({ plate: taughtPlate, takenAt: "2026-12-01T18:30:00Z" })).toBe(true);
});

it("answers a mapped sniff through the map", () => {
  const [sniff] = servedToTwo({ onFirst: 0, onSecond: 1, seed: 78 });
  const plain = answerSniff(DEMO_NOSE, sniff!);
  const moved = answerSniff(NOSE, sniff!);
  if (plain.kind !== "answered" || moved.kind !== "answered") throw new Error("not answered");
  expect(moved.horizons.at(-1)!.logits).not.toEqual(plain.horizons.at(-1)!.logits);
});

it("asks for more where there are too few pairs", () => {
  const few = move({ onFirst: 3, onSecond: 10, seed: 1 });
  expect(few).toEqual({ ok: false, error: { kind: "tooFewPairs", pairs: 3, more: 2 } });
});

it("finds no gain between two sniffers that are the same", () => {
  // The same unit at the same age under both names: what differs is gusts and noise.
  const served = servedToTwo({ onFirst: 8, onSecond: 8, seed: 9, second: TAUGHT_NOW });
  const same = transferNose(DEMO_NOSE, served, OPTIONS);
  if (same.ok) throw new Error(`a gain of ${same.value.nose.transfer?.gain.factor}`);
  expect(same.error.kind).toBe("noGain");
});

it.each([
  [
    "the sniffer that it was taught on",
    { id: DEMO_NOSE.sniffer.id, channels: DEMO_NOSE.sniffer.channels },
    "sameSniffer",
  ],
  [
    "a sniffer with other channels",
    { id: SECOND_ID, channels: DEMO_NOSE.sniffer.channels.slice(1) },
    "otherChannels",
  ],
])("refuses %s", (_what, sniffer, kind) => {
  expect(transferNose(DEMO_NOSE, [], { ...OPTIONS, sniffer })).toMatchObject({ ok: false, error: { kind } });
});

it("refuses to move a copy that was moved", () => {
  expect(transferNose(NOSE, [], OPTIONS)).toEqual({ ok: false, error: { kind: "alreadyMoved" } });
});
