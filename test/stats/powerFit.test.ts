import fc from "fast-check";
import { expect, it } from "vitest";
import { powerFit } from "../../src/stats/powerFit.js";

it("finds the law that made the points", () => {
  // Counted by hand: y = 2 / sqrt(x).
  const { scale, exponent } = powerFit([1, 4, 16], [2, 1, 0.5]);
  expect(scale).toBeCloseTo(2, 12);
  expect(exponent).toBeCloseTo(-0.5, 12);
});

it("scales with y and turns its exponent round with 1/y", () => {
  const positive = fc.double({ min: 0.01, max: 100, noNaN: true });
  fc.assert(
    fc.property(fc.tuple(positive, positive, positive), positive, (ys, factor) => {
      const xs = [5, 10, 20];
      const fit = powerFit(xs, ys);
      const scaled = powerFit(
        xs,
        ys.map((y) => factor * y),
      );
      expect(scaled.exponent).toBeCloseTo(fit.exponent, 8);
      expect(scaled.scale / fit.scale).toBeCloseTo(factor, 6);
      const turned = powerFit(
        xs,
        ys.map((y) => 1 / y),
      );
      expect(turned.exponent).toBeCloseTo(-fit.exponent, 8);
    }),
  );
});

it.each([
  ["one point", [1], [1]],
  ["equal xs", [2, 2], [1, 3]],
  ["a zero", [1, 2], [1, 0]],
  ["unequal lengths", [1, 2, 3], [1, 2]],
])("refuses %s", (_what, xs, ys) => {
  expect(() => powerFit(xs, ys)).toThrow(RangeError);
});
