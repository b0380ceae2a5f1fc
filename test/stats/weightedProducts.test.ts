import fc from "fast-check";
import { expect, it } from "vitest";
import { matMul, transpose } from "../../src/stats/linearAlgebra.js";
import { dot, weightedProducts } from "../../src/stats/weightedProducts.js";

const value = fc.double({ min: -10, max: 10, noNaN: true });
const columnsAndWeights = fc
  .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 7 }))
  .chain(([size, rows]) =>
    fc.record({
      size: fc.constant(size),
      columns: fc.array(value, { minLength: size * rows, maxLength: size * rows }),
      weight: fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: rows, maxLength: rows }),
    }),
  );

it("adds up a stretch of odd and of even length", () => {
  // By hand: 2 * 1 + 3 * 10 + 4 * 100, and without the last.
  expect(dot(Float64Array.of(9, 2, 3, 4), 1, Float64Array.of(1, 10, 100))).toBe(432);
  expect(dot(Float64Array.of(9, 2, 3, 4), 1, Float64Array.of(1, 10))).toBe(32);
  expect(dot(Float64Array.of(9), 0, new Float64Array(0))).toBe(0);
});

it("is the matrix product X' W X, below the diagonal and on it", () => {
  fc.assert(
    fc.property(columnsAndWeights, ({ size, columns, weight }) => {
      const rows = weight.length;
      const weighted = columns.map((one, at) => one * weight[at % rows]!);
      const wanted = matMul(columns, transpose(weighted, size, rows), size, rows, size);
      const made = weightedProducts(Float64Array.from(columns), size, Float64Array.from(weight));
      for (let i = 0; i < size; i += 1)
        for (let j = 0; j <= i; j += 1) expect(made[i * size + j]).toBeCloseTo(wanted[i * size + j]!, 9);
    }),
  );
});
