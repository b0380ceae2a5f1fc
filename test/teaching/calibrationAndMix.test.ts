import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { calibrate } from "../../src/nose/calibrate.js";
import { sigmoid } from "../../src/stats/logistic.js";
import { logLoss } from "../../src/stats/scores.js";
import { chooseCalibration, fitCalibration } from "../../src/teaching/chooseCalibration.js";
import { dealFolds } from "../../src/teaching/dealFolds.js";
import { fitMix } from "../../src/teaching/fitMix.js";
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
    scarcerPlates: count / 3,
    margin: 1 / (count + 2),
  };
}

describe("calibration", () => {
  it("leaves honest scores alone, and cools overconfident ones", () => {
    expect(chooseCalibration(cases(400, 1, 1)).calibration.kind).toBe("identity");
    const cooled = chooseCalibration({ ...cases(400, 4, 1), scarcerPlates: 10 }).calibration;
    expect(["temperature", "platt"]).toContain(cooled.kind);
  });

  it("is no worse than doing nothing in nested evaluation, over many seeds", () => {
    let [done, nothing] = [0, 0];
    for (let seed = 0; seed < 12; seed += 1) {
      const sharpness = [0.5, 1, 3][seed % 3]!;
      const taught = cases(120, sharpness, seed);
      const fresh = cases(400, sharpness, 1000 + seed);
      const { calibration } = chooseCalibration(taught);
      const loss = (p: Float64Array) => logLoss(p, fresh.truth);
      done += loss(fresh.logits.map((one) => calibrate(calibration, one, taught.margin)));
      nothing += loss(fresh.logits.map((one) => calibrate({ kind: "identity" }, one, taught.margin)));
    }
    expect(done).toBeLessThanOrEqual(nothing);
  });

  it.each(["identity", "temperature", "platt", "isotonic"] as const)("%s never falls", (kind) => {
    const { logits, truth } = cases(150, 2, 7);
    const map = fitCalibration(logits, truth, kind);
    const number = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(number, number, (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        expect(calibrate(map, high, 0.01)).toBeGreaterThanOrEqual(calibrate(map, low, 0.01));
        expect(calibrate(map, high, 0.01)).toBeLessThanOrEqual(0.99);
      }),
    );
  });

  it("scores that run the wrong way become one flat probability, never a turned order", () => {
    const { logits, truth } = cases(200, -1, 3);
    expect(fitCalibration(logits, truth, "platt")).toMatchObject({ slope: 0 });
  });
});

describe("the mixture", () => {
  it("gives weight to the model that knows, and none to one that is not allowed", () => {
    const { logits, truth } = cases(300, 1, 5);
    const random = seededRandom(6);
    const noise = logits.map(() => 2 * standardNormal(random));
    const one = { truth: Float64Array.from(truth), weight: new Float64Array(300).fill(1) };
    const [knows, guesses] = fitMix({ ...one, logits: [logits, noise], allowed: [true, true] });
    expect(knows!).toBeGreaterThan(0.6);
    expect(guesses!).toBeLessThan(0.2);
    expect(fitMix({ ...one, logits: [logits, noise], allowed: [false, true] })[0]).toBe(0);
  });

  it("is never negative, whatever the scores", () => {
    const scores = fc.array(fc.double({ min: -9, max: 9, noNaN: true }), { minLength: 20, maxLength: 20 });
    fc.assert(
      fc.property(
        scores,
        scores,
        fc.array(fc.boolean(), { minLength: 20, maxLength: 20 }),
        (a, b, truths) => {
          const weights = fitMix({
            logits: [Float64Array.from(a), Float64Array.from(b)],
            truth: Float64Array.from(truths, Number),
            weight: new Float64Array(20).fill(1),
            allowed: [true, true],
          });
          expect(weights.every((weight) => weight >= 0 && Number.isFinite(weight))).toBe(true);
        },
      ),
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
