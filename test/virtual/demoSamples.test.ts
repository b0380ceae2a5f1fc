import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import { readSniffFile } from "../../src/sniff/sniffFile.js";
import { BALANCED_GROUPS, demoPlan } from "../../src/virtual/demoPlan.js";
import { demoSamples } from "../../src/virtual/demoSamples.js";
import { simulateSniff, type SimulatedSniff } from "../../src/virtual/simulateSniff.js";
import { NIGHT_MARKET } from "../../src/virtual/dishes.js";
import { builtUnit } from "../../src/virtual/unit.js";
import {
  cleanAirFeatures,
  crossedAuc,
  headspaceFeatures,
  logistic,
  nearest,
  trainedAuc,
  type Row,
} from "./plainRivals.js";

const FILE = new URL("../../models/demo.sniffs.jsonl", import.meta.url);
const text = readFileSync(FILE, "utf8");
const { sniffs, faults } = readSniffFile(text);
const demo = sniffs as unknown as readonly SimulatedSniff[];

const rowsOf = (group: string, featuresOf: (sniff: SimulatedSniff) => number[], from = demo): Row[] =>
  from.map((sniff) => ({
    fold: sniff.occasion,
    features: featuresOf(sniff),
    label: sniff.groups[group] === "present" ? 1 : 0,
  }));

describe("the demo file", () => {
  it("is what its command writes today", () => {
    const made = demoSamples({ plates: 208, seed: 20_261_125 });
    expect(made.map((sniff) => `${JSON.stringify(sniff)}\n`).join("") === text).toBe(true);
  });

  it("is read without a fault, and stays small enough to ship", () => {
    expect(faults).toEqual([]);
    expect(demo).toHaveLength(208);
    expect(text.length).toBeLessThan(1.5e6);
  });

  it("has at least 90 plates with and 90 without each balanced group", () => {
    for (const group of BALANCED_GROUPS) {
      const present = demo.filter((sniff) => sniff.groups[group] === "present").length;
      expect(present).toBeGreaterThanOrEqual(90);
      expect(demo.length - present).toBeGreaterThanOrEqual(90);
    }
  });

  it("holds one plate a sniff, over at least 12 evenings, in order of time, by one sniffer", () => {
    expect(new Set(demo.map((sniff) => sniff.plate)).size).toBe(208);
    expect(new Set(demo.map((sniff) => sniff.occasion)).size).toBeGreaterThanOrEqual(12);
    const taken = demo.map((sniff) => sniff.takenAt);
    expect(taken).toEqual([...taken].sort());
    expect(new Set(demo.map((sniff) => sniff.sniffer.id)).size).toBe(1);
  });

  it("gives every evening its own air", () => {
    const made = demoSamples({ plates: 24, seed: 1 });
    const evenings = [...new Set(made.map((sniff) => sniff.occasion))];
    const pressures = evenings.map(
      (evening) =>
        new Set(made.filter((it) => it.occasion === evening).map((it) => it.air.cleanAir.pressurePa)),
    );
    expect(pressures.every((ofEvening) => ofEvening.size === 1)).toBe(true);
    expect(new Set(pressures.flatMap((ofEvening) => [...ofEvening])).size).toBe(evenings.length);
  });
});

describe("the plan", () => {
  it("holds every group in half of each evening's plates", () => {
    const plan = demoPlan(208, seededRandom(1));
    for (let evening = 0; evening < 13; evening += 1) {
      const plates = plan.filter((it) => it.evening === evening);
      expect(plates).toHaveLength(16);
      for (const group of BALANCED_GROUPS) {
        expect(plates.filter((it) => it.dish.groups.includes(group))).toHaveLength(8);
      }
    }
  });

  it("shuffles: the order within an evening is another each time", () => {
    const order = (seed: number) =>
      demoPlan(16, seededRandom(seed)).map(({ dish }) =>
        BALANCED_GROUPS.map((group) => Number(dish.groups.includes(group))).join(""),
      );
    expect(order(1)).toEqual(order(1));
    expect(new Set([1, 2, 3, 4, 5].map((seed) => order(seed).join())).size).toBe(5);
  });

  it("serves all 32 dishes once in two blocks", () => {
    const ids = demoPlan(32, seededRandom(3)).map((it) => it.dish.id);
    expect(new Set(ids).size).toBe(NIGHT_MARKET.length);
  });

  it.each([1, 7, 50, 209, 400])("spreads %s plates over evenings in order, none left out", (plates) => {
    const evenings = demoPlan(plates, seededRandom(1)).map((it) => it.evening);
    expect(evenings).toHaveLength(plates);
    expect(evenings).toEqual([...evenings].sort((a, b) => a - b));
    const most = Math.max(12, Math.ceil(plates / 16));
    expect(Math.max(...evenings)).toBeLessThan(most);
    expect(new Set(evenings).size).toBe(Math.min(plates, most));
  });

  it("refuses no plates and half a plate", () => {
    expect(() => demoPlan(0, seededRandom(1))).toThrow(RangeError);
    expect(() => demoPlan(2.5, seededRandom(1))).toThrow(RangeError);
  });
});

describe("how hard the demo samples are, by evening held out", () => {
  // Under chance an AUC of 104 against 104 plates has a standard error of 0.04 (Hanley and McNeil 1982); 0.6 is
  // two and a half of them above one half.
  it.each(BALANCED_GROUPS)("clean air alone does not foretell %s (checks MX-11, T-MX-1)", (group) => {
    const rows = rowsOf(group, cleanAirFeatures);
    expect(crossedAuc(rows, nearest(5))).toBeLessThan(0.6);
    expect(crossedAuc(rows, logistic)).toBeLessThan(0.6);
  });

  it.each(BALANCED_GROUPS)("heat and steam alone do not foretell %s", (group) => {
    const rows = rowsOf(group, ({ air }) => [
      air.headspace.temperatureC! - air.cleanAir.temperatureC!,
      air.headspace.humidityPct! - air.cleanAir.humidityPct!,
    ]);
    expect(crossedAuc(rows, nearest(5))).toBeLessThan(0.6);
  });

  it.each([
    ["meat", 0.95],
    ["fish", 0.97],
    ["shellfish", 0.95],
  ])("a plain model finds %s far above chance, and not without error", (group, least) => {
    const auc = crossedAuc(rowsOf(group, headspaceFeatures), logistic);
    expect(auc).toBeGreaterThan(least);
    expect(auc).toBeLessThan(0.998);
  });

  it("egg, often a little in a filling, stays clearly harder", () => {
    const auc = crossedAuc(rowsOf("egg", headspaceFeatures), logistic);
    expect(auc).toBeGreaterThan(0.7);
    expect(auc).toBeLessThan(0.9);
  });

  it("nearest neighbours see less than the linear model, and far more than chance", () => {
    const rows = rowsOf("fish", headspaceFeatures);
    expect(crossedAuc(rows, nearest(5))).toBeGreaterThan(0.85);
    expect(crossedAuc(rows, nearest(5))).toBeLessThan(crossedAuc(rows, logistic));
  });

  it("a model of the demo unit does worse on another unit (check MX-09)", () => {
    const unit = builtUnit(seededRandom(2));
    const elsewhere = demo.slice(0, 96).map((sniff, i) => {
      const dish = NIGHT_MARKET.find((it) => it.name === sniff.dish)!;
      return simulateSniff({ ...sniff, seed: 1000 + i, dish, unit, cleanAirMs: 30_000, headspaceMs: 90_000 });
    });
    const loss = ["meat", "fish", "shellfish"].map((group) => {
      const taught = rowsOf(group, headspaceFeatures);
      const own = crossedAuc(taught, logistic);
      return own - trainedAuc(taught, rowsOf(group, headspaceFeatures, elsewhere), logistic);
    });
    expect(Math.max(...loss)).toBeGreaterThan(0.03);
  });
});
