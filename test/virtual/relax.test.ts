import fc from "fast-check";
import { expect, it } from "vitest";
import { FAMILIES, FAMILY_TRAITS } from "../../src/virtual/families.js";
import { relax } from "../../src/virtual/relax.js";

it("closes half the gap in tau ln 2, up and down", () => {
  // Analytic solution of dy/dt = (goal - y) / tau.
  expect(relax(0, 10, 4000, 9000, 4000 * Math.LN2)).toBeCloseTo(5, 12);
  expect(relax(10, 0, 4000, 9000, 9000 * Math.LN2)).toBeCloseTo(5, 12);
});

it("keeps 1/e of the gap after one time constant", () => {
  expect(relax(0, 1, 3000, 8000, 3000)).toBeCloseTo(0.632121, 6); // 1 - 1/e, counted by hand
});

it("gives the same in one step or two", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 20_000, noNaN: true }),
      fc.double({ min: 0, max: 20_000, noNaN: true }),
      (value, goal, first, second) => {
        const once = relax(value, goal, 5000, 13_000, first + second);
        const twice = relax(relax(value, goal, 5000, 13_000, first), goal, 5000, 13_000, second);
        expect(twice).toBeCloseTo(once, 9);
      },
    ),
  );
});

it("stays between start and goal", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 100, noNaN: true }),
      fc.double({ min: 0, max: 1e9, noNaN: true }),
      (value, goal, step) => {
        const after = relax(value, goal, 5000, 13_000, step);
        expect(after).toBeGreaterThanOrEqual(Math.min(value, goal) - 1e-9);
        expect(after).toBeLessThanOrEqual(Math.max(value, goal) + 1e-9);
      },
    ),
  );
});

it("releases every family more slowly than it takes it up", () => {
  // Common practice: recovery of heated oxides is slower than the answer.
  for (const family of FAMILIES) {
    expect(FAMILY_TRAITS[family].releaseMs).toBeGreaterThan(FAMILY_TRAITS[family].uptakeMs);
  }
});

it("refuses a time constant of 0 and a step backwards", () => {
  expect(() => relax(0, 1, 0, 1, 1)).toThrow(RangeError);
  expect(() => relax(0, 1, 1, 1, -1)).toThrow(RangeError);
});
