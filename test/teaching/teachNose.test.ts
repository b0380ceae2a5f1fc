import * as tf from "@tensorflow/tfjs";
import { beforeAll, describe, expect, it } from "vitest";
import { extractFeatures } from "../../src/features/extractFeatures.js";
import { otherView, recipeOf } from "../../src/features/recipe.js";
import { findPlate } from "../../src/finding/findPlate.js";
import { seededRandom, shuffled } from "../../src/kernel/random.js";
import { answerSniff } from "../../src/nose/answer.js";
import { calibrate } from "../../src/nose/calibrate.js";
import { compareNoses } from "../../src/nose/compareNoses.js";
import { kernelLogits } from "../../src/nose/kernelLogits.js";
import { shareAtDistance, softClipped } from "../../src/nose/mixLogits.js";
import { parseNose, serialiseNose } from "../../src/nose/noseFile.js";
import type { Nose } from "../../src/nose/nose.js";
import { standardised } from "../../src/nose/standardised.js";
import { headspacePrefix, type Sniff } from "../../src/sniff/sniff.js";
import { teachNose, type TeachOptions } from "../../src/teaching/teachNose.js";
import { SYNTHETIC_CHANNELS, syntheticSniffs } from "./syntheticSniffs.js";
import { useWasm } from "./useBackend.js";

const OPTIONS: TeachOptions = { seed: 5, id: "n", name: "n", taughtAt: "2026-11-25T18:30:00Z" };
const REQUEST = { groups: ["meat", "fish"], acceptedMissRate: 0.1, allergyGroups: [] };

const SAMPLES = syntheticSniffs({ plates: 80, seed: 1, strength: 6 });
const NEW_PLATES = syntheticSniffs({ plates: 60, seed: 2, strength: 6 });
let nose: Nose;

async function teach(samples: readonly Sniff[], more: Partial<TeachOptions> = {}): Promise<Nose> {
  const taught = await teachNose(samples, { ...OPTIONS, withoutNets: true, ...more });
  if (!taught.ok) throw new Error(taught.error.kind);
  return taught.value.nose;
}

beforeAll(async () => {
  await useWasm();
  nose = await teach(SAMPLES, { withoutNets: false });
});

describe("a taught nose", () => {
  it("tells new plates apart, and most of its findings are words", () => {
    const found = NEW_PLATES.flatMap((sniff) =>
      findPlate(nose, sniff, REQUEST).groups.map((one) => ({ ...one, truth: sniff.groups[one.group] })),
    );
    const said = found.filter(({ verdict }) => verdict !== "uncertain");
    const wrong = said.filter(({ verdict, truth }) => (verdict === "smelled") !== (truth === "present"));
    // The groups lie six standard deviations apart, so half of the findings is a modest demand.
    expect(said.length).toBeGreaterThan(found.length / 2);
    expect(wrong.length).toBeLessThanOrEqual(0.1 * said.length);
  });

  it("answers early looks too, the same before and after a later sweep of the same horizon", () => {
    const sniff = NEW_PLATES[0]!;
    const whole = answerSniff(nose, sniff);
    const cut = answerSniff(nose, {
      ...sniff,
      headspace: { atMs: sniff.headspace.atMs.slice(0, 7), ohm: sniff.headspace.ohm.slice(0, 7) },
    });
    if (whole.kind !== "answered" || cut.kind !== "answered") throw new Error("no answer");
    expect(cut.horizons.length).toBeLessThan(whole.horizons.length);
    expect(whole.horizons.slice(0, cut.horizons.length)).toEqual(cut.horizons);
  });

  it("of an older version draws every probability in by its margin, as it was calibrated", () => {
    const { marginAtEnds, ...older } = nose;
    expect(marginAtEnds).toBe(true);
    const read = parseNose(serialiseNose(older));
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const answer = answerSniff(read.value, NEW_PLATES[0]!);
    if (answer.kind !== "answered") throw new Error("no answer");
    answer.horizons.forEach(({ logits, probabilities }, place) =>
      nose.groups.forEach(({ horizons }, group) => {
        const { calibration, margin } = horizons[place]!;
        const plain = calibrate(calibration, logits[group]!, 0);
        expect(probabilities[group]).toBeCloseTo(margin + (1 - 2 * margin) * plain, 12);
        expect(probabilities[group]).not.toBe(calibrate(calibration, logits[group]!, margin));
      }),
    );
    expect(answer.horizons.length).toBeGreaterThan(0);
  });

  it("of an older version bends the log-odds of its trees and lets them stand at any distance, as it was calibrated", async () => {
    const taught = await teachNose(SAMPLES, { ...OPTIONS, withoutNets: true, withRivals: true });
    const trees = taught.ok ? taught.value.rivals.trees : undefined;
    if (trees === undefined) throw new Error("no trees");
    const { unbentTrees, horizons, ...older } = trees;
    expect(unbentTrees).toBe(true);
    const usual = horizons.at(-1)!.usualDistance;
    const standing = horizons.map(({ usualDistance: _, ...one }) => one);
    const read = parseNose(serialiseNose({ ...older, horizons: standing }));
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const lastOf = (one: Nose) => {
      const answer = answerSniff(one, NEW_PLATES[0]!);
      if (answer.kind !== "answered") throw new Error("no answer");
      return answer.horizons.at(-1)!;
    };
    const [now, before] = [lastOf(trees), lastOf(read.value)];
    const share = shareAtDistance(now.strangeness, usual);
    expect(share).not.toBeCloseTo(1, 2);
    expect(before.strangeness).toBe(now.strangeness);
    expect(before.logits).toHaveLength(2);
    now.logits.forEach((logit, group) =>
      expect(before.logits[group]).toBeCloseTo(6 * Math.tanh(logit / share / 6), 9),
    );
  });

  it("lets its second kernel look at the other view of the sniff", async () => {
    const taught = await teachNose(SAMPLES, { ...OPTIONS, withoutNets: true, withRivals: true });
    const alone = taught.ok ? taught.value.rivals.secondKernel : undefined;
    if (alone === undefined) throw new Error("no second kernel");
    const sniff = NEW_PLATES[0]!;
    const answer = answerSniff(alone, sniff);
    if (answer.kind !== "answered") throw new Error("no answer");
    const { secondKernel, uptoMs } = alone.horizons.at(-1)!;
    const seen = extractFeatures(headspacePrefix(sniff, uptoMs), otherView(recipeOf(alone.recipe)!));
    if (!secondKernel || seen === null) throw new Error("nothing to look with, or at");
    const x = standardised(secondKernel.input, seen.values, seen.humidityRise);
    const said = kernelLogits(secondKernel.kernel, x).map(softClipped);
    expect([...answer.horizons.at(-1)!.logits]).toEqual([...said]);
    expect(said.some((one) => Math.abs(one) > 1)).toBe(true);
  });

  it("comes back from its file number by number, and answers alike", () => {
    const read = parseNose(serialiseNose(nose), SYNTHETIC_CHANNELS);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    expect(read.value).toEqual(nose);
    expect(findPlate(read.value, NEW_PLATES[3]!, REQUEST)).toEqual(findPlate(nose, NEW_PLATES[3]!, REQUEST));
  });

  it("compares with itself as equal, on all its held-out plates", () => {
    const [meat] = compareNoses(nose, nose);
    expect(meat).toMatchObject({ group: "fish", plates: 80 });
    for (const { older, newer, onlyOlder, onlyNewer, p } of [meat!.found, meat!.quiet]) {
      expect(older).toEqual(newer);
      expect([onlyOlder, onlyNewer, p]).toEqual([0, 0, 1]);
    }
  });
});

describe("what must not matter", () => {
  it("the order of the samples", async () => {
    const [one, other] = [await teach(SAMPLES), await teach(shuffled(SAMPLES, seededRandom(9)))];
    expect(other).toEqual(one);
  });

  it("the order in which the sniffer lists its channels", async () => {
    const order = [2, 0, 3, 1];
    const permuted = (sniff: Sniff): Sniff => {
      const phase = (from: Sniff["headspace"]) => ({
        ...from,
        ohm: from.ohm.map((s) => order.map((i) => s[i]!)),
      });
      return {
        ...sniff,
        sniffer: { ...sniff.sniffer, channels: order.map((i) => sniff.sniffer.channels[i]!) },
        cleanAir: phase(sniff.cleanAir!),
        headspace: phase(sniff.headspace),
      };
    };
    const [one, other] = [await teach(SAMPLES), await teach(SAMPLES.map(permuted))];
    for (const sniff of NEW_PLATES.slice(0, 10))
      expect(findPlate(other, permuted(sniff), REQUEST)).toEqual(findPlate(one, sniff, REQUEST));
  });

  it("raw temperature, humidity and pressure of the headspace alone: they are no features", async () => {
    const plain = await teach(SAMPLES);
    const leaky = SAMPLES.map((sniff) => ({
      ...sniff,
      air: {
        headspace: {
          temperatureC: sniff.groups["meat"] === "present" ? 60 : 10,
          humidityPct: 50,
          pressurePa: 1e5,
        },
      },
    }));
    expect(await teach(leaky)).toEqual(plain);
  });
});

describe("little or odd data", () => {
  it("two plates of each truth: taught, and everything uncertain", async () => {
    const four = ["present", "present", "absent", "absent"] as const;
    const few = SAMPLES.slice(0, 4).map((sniff, i) => ({ ...sniff, groups: { meat: four[i]! } }));
    const small = await teach(few, { withoutNets: false });
    for (const sniff of NEW_PLATES.slice(0, 10)) {
      const found = findPlate(small, sniff, { ...REQUEST, groups: ["meat"] }).groups[0]!;
      expect(found.verdict).toBe("uncertain");
    }
  });

  it("a group that is always present is known and never answered for", async () => {
    const always = SAMPLES.slice(0, 30).map((sniff) => ({
      ...sniff,
      groups: { ...sniff.groups, egg: "present" as const },
    }));
    const found = findPlate(await teach(always), NEW_PLATES[0]!, { ...REQUEST, groups: ["egg"] }).groups[0]!;
    expect(found).toMatchObject({ verdict: "uncertain", probability: null });
    expect(found.reasons).toEqual([
      { kind: "tooFewPlates", truth: "absent", plates: 0, bestShowable: null, needed: 9 },
    ]);
  });

  it("unknown truths are left out of that group only", async () => {
    const half = SAMPLES.map((sniff, i) =>
      i % 2 === 0 ? sniff : { ...sniff, groups: { fish: sniff.groups["fish"]! } },
    );
    const taught = await teach(half);
    const counts = Object.fromEntries(
      taught.groups.map((one) => [one.name, one.platesPresent + one.platesAbsent]),
    );
    expect(counts).toEqual({ fish: 80, meat: 40 });
  });

  it("several sniffs of a plate stay in one fold and count as one plate", async () => {
    const twice = SAMPLES.slice(0, 40).flatMap((sniff) => [sniff, { ...sniff, id: `${sniff.id}-again` }]);
    const taught = await teach(twice);
    expect(taught.platesTaught).toBe(40);
    const { plate, fold } = taught.groups[0]!;
    const foldsOf = new Map<number, Set<number>>();
    plate.forEach((one, i) => foldsOf.set(one, (foldsOf.get(one) ?? new Set()).add(fold[i]!)));
    expect([...foldsOf.values()].every((folds) => folds.size === 1)).toBe(true);
    const found = findPlate(taught, NEW_PLATES[0]!, REQUEST).groups[0]!;
    expect(found.basis!.heldOutPresent + found.basis!.heldOutAbsent).toBe(40);
  });

  it("a constant channel, single sweeps and samples of another sniffer do no harm and are reported", async () => {
    const odd = SAMPLES.slice(0, 40).map((sniff, i) => ({
      ...sniff,
      sniffer: i < 3 ? { ...sniff.sniffer, id: "borrowed" } : sniff.sniffer,
      cleanAir: undefined,
      headspace: { atMs: [0], ohm: [[5000, ...sniff.headspace.ohm[11]!.slice(1)]] },
    }));
    const { report, horizons } = await teach(odd);
    expect(horizons).toHaveLength(1);
    expect(report.leftOut).toEqual([{ why: "otherSniffer", sniffs: 3 }]);
    expect(report.notes).toEqual(expect.arrayContaining(["noCleanAir", "constantChannels"]));
  });

  it("no samples, and samples that name no group, are refused with their reason", async () => {
    expect(await teachNose([], OPTIONS)).toEqual({ ok: false, error: { kind: "noSamples" } });
    const silent = SAMPLES.map((sniff) => ({ ...sniff, groups: {} }));
    expect(await teachNose(silent, OPTIONS)).toEqual({ ok: false, error: { kind: "noKnownGroup" } });
  });
});

describe("cancel and memory", () => {
  it("stops within two steps once asked", async () => {
    let asked = 0;
    const isCancelled = () => (asked += 1) > 14; // past the eleven plain folds, into the nets
    const result = await teachNose(SAMPLES, { ...OPTIONS, isCancelled });
    expect(result).toEqual({ ok: false, error: { kind: "cancelled" } });
    expect(asked).toBe(15);
  });

  it("leaves no tensor behind, finished or cancelled", async () => {
    const before = tf.memory().numTensors;
    const some = SAMPLES.slice(0, 24);
    await teachNose(some, OPTIONS);
    expect(tf.memory().numTensors).toBe(before);
    let asked = 0;
    await teachNose(some, { ...OPTIONS, isCancelled: () => (asked += 1) > 20 });
    expect(tf.memory().numTensors).toBe(before);
  });
});
