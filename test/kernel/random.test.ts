import fc from "fast-check";
import { expect, it } from "vitest";
import { seededRandom, shuffled, standardNormal } from "../../src/kernel/random.js";

it("repeats for the same seed and differs for another", () => {
  const draw = (seed: number) => Array.from({ length: 5 }, seededRandom(seed));
  expect(draw(7)).toEqual(draw(7));
  expect(draw(7)).not.toEqual(draw(8));
});

it("gives fractions in [0, 1) whose mean and variance are those of the uniform law", () => {
  const random = seededRandom(20261125);
  const values = Array.from({ length: 20_000 }, random);
  expect(values.every((value) => value >= 0 && value < 1)).toBe(true);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  // Uniform law: mean 1/2, variance 1/12; five standard errors of 20,000 draws.
  expect(Math.abs(mean - 0.5)).toBeLessThan(5 * Math.sqrt(1 / 12 / 20_000));
  expect(Math.abs(variance - 1 / 12)).toBeLessThan(0.005);
});

it("gives normal deviates: 68.27 % lie within one standard deviation (any table of the normal law)", () => {
  const random = seededRandom(3);
  const within = Array.from({ length: 20_000 }, () => Math.abs(standardNormal(random)) < 1).filter(Boolean);
  expect(within.length / 20_000).toBeCloseTo(0.6827, 1.7);
});

it("shuffles without losing or inventing an item", () => {
  fc.assert(
    fc.property(fc.array(fc.integer()), fc.nat(), (items, seed) => {
      const order = (left: number, right: number) => left - right;
      expect(shuffled(items, seededRandom(seed)).sort(order)).toEqual([...items].sort(order));
    }),
  );
});
