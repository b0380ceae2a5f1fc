import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { calibrate, slipRate } from "../../src/nose/calibrate.js";
import { mixedLogits, readyLogits, shareAtDistance, softClipped } from "../../src/nose/mixLogits.js";
import { MODEL_KINDS, type ModelKind } from "../../src/nose/models.js";
import { sigmoid, withinMargin } from "../../src/stats/logistic.js";
import { logLoss } from "../../src/stats/scores.js";
import { mean } from "../../src/stats/summary.js";
import {
  chooseCalibrations,
  fitCalibration,
  sharedTemperature,
} from "../../src/teaching/chooseCalibration.js";
import {
  chooseMix,
  equalMix,
  judgeLogits,
  type JudgedCases,
  USUAL_KINDS,
} from "../../src/teaching/chooseMix.js";
import { dealFolds } from "../../src/teaching/dealFolds.js";
import { symmetricEigen } from "../../src/teaching/symmetricEigen.js";

/** Cases whose true log-odds are known; the score says `sharpness` times as much. */
function cases(count: number, sharpness: number, seed: number) {
  const random = seededRandom(seed);
  const honest = Float64Array.from({ length: count }, () => 2 * standardNormal(random));
  return {
    honest,
    logits: honest.map((one) => sharpness * one),
    truth: Uint8Array.from(honest, (one) => (random() < sigmoid(one) ? 1 : 0)),
    folds: Int32Array.from(honest, (_, i) => i % 5),
    weight: new Float64Array(count).fill(1),
    scarcerPlates: count / 3,
    margin: slipRate(count),
  };
}

/** The calibration of one group alone. */
function chosen(group: ReturnType<typeof cases>) {
  return chooseCalibrations([group])[0]!.calibration;
}

describe("calibration", () => {
  it("leaves honest scores alone, and cools overconfident ones", () => {
    expect(chosen(cases(400, 1, 1)).kind).toBe("identity");
    const cooled = chosen({ ...cases(400, 4, 1), scarcerPlates: 10 });
    expect(["temperature", "platt"]).toContain(cooled.kind);
  });

  it("is no worse than doing nothing in nested evaluation, over many seeds", () => {
    let [done, nothing] = [0, 0];
    for (let seed = 0; seed < 12; seed += 1) {
      const sharpness = [0.5, 1, 3][seed % 3]!;
      const taught = cases(120, sharpness, seed);
      const fresh = cases(400, sharpness, 1000 + seed);
      const calibration = chosen(taught);
      const loss = (p: Float64Array) => logLoss(p, fresh.truth);
      done += loss(fresh.logits.map((one) => calibrate(calibration, one, taught.margin)));
      nothing += loss(fresh.logits.map((one) => calibrate({ kind: "identity" }, one, taught.margin)));
    }
    expect(done).toBeLessThanOrEqual(nothing);
  });

  it.each(["identity", "temperature", "platt", "isotonic"] as const)("%s never falls", (kind) => {
    const taught = cases(150, 2, 7);
    const { calibration: shared } = sharedTemperature([taught])[0]!;
    const map = kind === "temperature" ? shared : fitCalibration(taught.logits, taught.truth, kind);
    expect(map.kind).toBe(kind);
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(calibrate(map, high, 0.01)).toBeGreaterThanOrEqual(calibrate(map, low, 0.01));
        expect(calibrate(map, high, 0.01)).toBeLessThanOrEqual(0.99);
      }),
    );
  });

  it("draws in from 0 and 1 without a tie: what was surer stays surer", () => {
    const fraction = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fraction, fraction, fc.double({ min: 0, max: 0.49, noNaN: true }), (a, b, margin) => {
        fc.pre(Math.abs(a - b) > 1e-6);
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(withinMargin(high, margin)).toBeGreaterThan(withinMargin(low, margin));
        expect(withinMargin(low, margin)).toBeGreaterThanOrEqual(margin);
        expect(withinMargin(high, margin)).toBeLessThanOrEqual(1 - margin + 1e-12);
        expect(withinMargin(a, margin) + withinMargin(1 - a, margin)).toBeCloseTo(1, 12);
      }),
    );
  });

  it("expects a slip in half a plate of one more than were held out, and knows nothing of none", () => {
    // Krichevsky and Trofimov (1981): (0 + 1/2) / (n + 1), counted by hand.
    expect([0, 1, 9, 24].map(slipRate)).toEqual([0.5, 0.25, 0.05, 0.02].map(Math.fround));
  });

  it("groups share one temperature, and a group that runs hotter than the rest gets its own map", () => {
    const alike = [1, 2, 3].map((seed) => ({ ...cases(200, 3, seed), scarcerPlates: 10 }));
    const kinds = (all: typeof alike) => chooseCalibrations(all).map(({ calibration }) => calibration);
    const [first, ...others] = kinds(alike);
    expect(first).toMatchObject({ kind: "temperature" });
    for (const other of others) expect(other).toEqual(first);
    const shifted = cases(600, 3, 4);
    const odd = {
      ...shifted,
      logits: shifted.logits.map((one) => one + 4),
      scarcerPlates: 20,
    };
    const last = (all: typeof alike) => kinds(all).at(-1)?.kind;
    expect(last([...alike, odd])).toBe("platt");
    // Peduzzi and others (1996): ten a parameter, and the map has two.
    expect(last([...alike, { ...odd, scarcerPlates: 19 }])).toBe("temperature");
    // Nor is a map worth its price where the group runs as hot as the rest.
    expect(last([...alike, { ...shifted, scarcerPlates: 20 }])).toBe("temperature");
  });

  it("scores that run the wrong way become one flat probability, never a turned order", () => {
    const { logits, truth } = cases(200, -1, 3);
    expect(fitCalibration(logits, truth, "platt")).toMatchObject({ slope: 0 });
  });
});

/** Held-out answers of all models for one group: `of` says what each makes of the honest log-odds. */
function heldOut(of: readonly ((honest: number, row: number) => number)[], count = 300) {
  const { honest, truth, folds } = cases(count, 1, 5);
  const judged = {
    rows: [...honest.keys()],
    groups: [0],
    groupCount: 1,
    truth: Int8Array.from(truth),
    weight: new Float64Array(count).fill(1),
    plates: Int32Array.from(honest.keys()),
    folds,
  };
  const said = of.map((make) => honest.map((one, row) => make(one, row)));
  return { judged, answers: readyLogits(said, new Float64Array(count), undefined) };
}

const plateLosses = (logits: Float64Array, judged: JudgedCases) => judgeLogits(logits, judged).losses;

describe("the mixture", () => {
  const random = seededRandom(6);
  const noisy = (much: number) => (one: number) => one + much * standardNormal(random);
  const guess = () => 6 * standardNormal(random);

  it("keeps the usual models, each with the same weight, where the others only repeat what one of them says", () => {
    const own = seededRandom(8);
    const errors = USUAL_KINDS.map(() => Float64Array.from({ length: 300 }, () => standardNormal(own)));
    const errorOf = (kind: ModelKind) => errors[Math.max(0, USUAL_KINDS.indexOf(kind))]!;
    const { judged, answers } = heldOut(
      MODEL_KINDS.map((kind) => (one: number, row: number) => one + errorOf(kind)[row]!),
    );
    const { chosen, kinds } = chooseMix(answers, judged, true);
    expect(chosen).toBe("mix");
    expect(kinds).toEqual(USUAL_KINDS);
    const weights = equalMix(kinds);
    MODEL_KINDS.forEach((kind, i) =>
      expect(weights[i]).toBe(USUAL_KINDS.includes(kind) ? Math.fround(1 / USUAL_KINDS.length) : 0),
    );
  });

  it("takes in a model that knows more than the usual ones", () => {
    const { judged, answers } = heldOut(MODEL_KINDS.map((kind) => noisy(kind === "nets" ? 0.2 : 3)));
    expect(chooseMix(answers, judged, true).kinds).toContain("nets");
    expect(chooseMix(answers, judged, false).kinds).not.toContain("nets");
  });

  it("leaves out models that guess boldly, and names the one that remains if it alone knows", () => {
    const { judged, answers } = heldOut(
      MODEL_KINDS.map((kind) =>
        ["discriminant", "neighbours", "logistic"].includes(kind) ? guess : noisy(1),
      ),
    );
    expect(chooseMix(answers, judged, true)).toMatchObject({
      chosen: "mix",
      kinds: ["kernel", "secondKernel"],
    });
    const { judged: again, answers: alone } = heldOut(
      MODEL_KINDS.map((kind) => (kind === "trees" ? (one: number) => one : guess)),
    );
    expect(chooseMix(alone, again, true)).toMatchObject({ chosen: "trees", kinds: ["trees"] });
  });

  it("lets trees answer alone by a smaller gain than another model needs", () => {
    const chance = seededRandom(6);
    const blurred = (one: number) => one + standardNormal(chance);
    const seen = MODEL_KINDS.map((kind) => {
      const { judged, answers } = heldOut(
        MODEL_KINDS.map((one) => (one === kind ? (x) => x : blurred)),
        150,
      );
      const lossOf = (kinds: readonly ModelKind[]) =>
        mean(plateLosses(mixedLogits(answers, equalMix(kinds)), judged));
      const { chosen, kinds } = chooseMix(answers, judged, true);
      return { kind, chosen, gain: lossOf(kinds) - lossOf([kind]) };
    });
    const [trees, others] = [
      seen.filter(({ kind }) => kind === "trees"),
      seen.filter(({ kind }) => kind !== "trees"),
    ];
    expect(trees).toMatchObject([{ chosen: "trees" }]);
    for (const { chosen } of others) expect(chosen).toBe("mix");
    // Some of them would do better alone, but not clearly.
    expect(others.filter(({ gain }) => gain > 0).length).toBeGreaterThan(0);
  });

  it("weighs a gain by how evenly the plates share it: one lucky plate leaves a model in", () => {
    const { judged, answers } = heldOut(MODEL_KINDS.map(() => noisy(1)));
    const bad = MODEL_KINDS.indexOf("discriminant");
    const turned = (rows: number) =>
      answers.map((said, i) =>
        i === bad ? said.map((one, row) => (row < rows ? -8 * Math.sign(one) : one)) : said,
      );
    expect(chooseMix(turned(1), judged, true).kinds).toContain("discriminant");
    expect(chooseMix(turned(100), judged, true).kinds).not.toContain("discriminant");
  });

  it("takes the trees' log-odds as they are and bends those of the others, which may grow without end", () => {
    const said = readyLogits(
      MODEL_KINDS.map(() => Float64Array.of(20, -20)),
      new Float64Array(2),
      undefined,
    );
    MODEL_KINDS.forEach((kind) => {
      const [high = NaN, low = NaN] = mixedLogits(said, equalMix([kind]));
      expect(low).toBe(-high);
      if (kind === "trees") expect(high).toBe(20);
      else expect(high).toBeLessThan(6);
    });
  });

  it("draws log-odds in with the distance from what was taught, but those of the kernels, which fall by themselves", () => {
    // Counted by hand: 2 / (1 + d) of them at d times the usual distance.
    expect([0, 3, 9, 15, Infinity].map((far) => shareAtDistance(far, 3))).toEqual([2, 1, 0.5, 1 / 3, 0]);
    expect(shareAtDistance(9, undefined)).toBe(1);
    const said = MODEL_KINDS.map(() => Float64Array.of(3, 3));
    const ready = readyLogits(said, Float64Array.of(1, 3), 1);
    MODEL_KINDS.forEach((kind, i) => {
      const [near = NaN, far = NaN] = ready[i]!;
      if (kind === "kernel" || kind === "secondKernel") expect(far).toBe(near);
      else if (kind === "trees") expect([near, far]).toEqual([3, 1.5]);
      else expect(far).toBe(softClipped(1.5));
    });
  });

  it("has no use for nets that were not taught", () => {
    const { judged, answers } = heldOut(MODEL_KINDS.map(() => noisy(1)));
    const { kinds, rivals } = chooseMix(answers, judged, false);
    expect(kinds).not.toContain("nets");
    expect(rivals.map(({ name }) => name)).toEqual([...MODEL_KINDS.filter((kind) => kind !== "nets"), "mix"]);
  });

  it("reports for each model alone, and for the mixture, the loss that the choice rested on", () => {
    const { judged, answers } = heldOut(MODEL_KINDS.map((_, i) => noisy(0.5 + i / 4)));
    const { chosen, kinds, rivals } = chooseMix(answers, judged, true);
    const alone = MODEL_KINDS.map((kind): [string, readonly ModelKind[]] => [kind, [kind]]);
    const told = chosen === "mix" ? [...alone, [chosen, kinds] as const] : alone;
    expect(rivals.map(({ name }) => name)).toEqual(told.map(([name]) => name));
    told.forEach(([, mix], place) => {
      // One sniff a plate and one group: the mean over the plates is that over the cases.
      const wanted = mean(plateLosses(mixedLogits(answers, equalMix(mix)), judged));
      expect(rivals[place]!.logLoss).toBeCloseTo(wanted, 9);
    });
  });

  it("is never worse held out than the mean of the usual models, whatever they say", () => {
    fc.assert(
      fc.property(
        fc.tuple(...MODEL_KINDS.map(() => fc.double({ min: 0, max: 4, noNaN: true }))),
        (noises) => {
          const { judged, answers } = heldOut(noises.map(noisy), 60);
          const lossOf = (kinds: readonly ModelKind[]) =>
            mean(plateLosses(mixedLogits(answers, equalMix(kinds)), judged));
          expect(lossOf(chooseMix(answers, judged, true).kinds)).toBeLessThanOrEqual(lossOf(USUAL_KINDS));
        },
      ),
      { numRuns: 30 },
    );
  });
});

it("folds: every unit in one fold, and each kind spread as evenly as can be", () => {
  const units = Int32Array.from({ length: 46 }, (_, row) => Math.floor(row / 2));
  const kind = (row: number) => (Math.floor(row / 2) < 13 ? "a" : "b");
  const folds = dealFolds(units, kind, 5, seededRandom(1));
  units.forEach((unit, row) => expect(folds[row]).toBe(folds[2 * unit]));
  for (const letter of ["a", "b"]) {
    const counts = [0, 1, 2, 3, 4].map(
      (fold) => new Set([...units].filter((_, row) => kind(row) === letter && folds[row] === fold)).size,
    );
    expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
  }
});

it("eigenvalues of [[2, 1], [1, 2]] are 3 and 1, along (1, 1) and (1, -1)", () => {
  // Counted by hand.
  const { values, vectors } = symmetricEigen(Float64Array.of(2, 1, 1, 2), 2);
  expect(values[0]).toBeCloseTo(3, 12);
  expect(values[1]).toBeCloseTo(1, 12);
  expect(vectors[0]! / vectors[1]!).toBeCloseTo(1, 12);
  expect(vectors[2]! / vectors[3]!).toBeCloseTo(-1, 12);
});
