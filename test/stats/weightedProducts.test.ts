import fc from "fast-check";
import { expect, it } from "vitest";
import { matMul, transpose } from "../../src/stats/linearAlgebra.js";
import { columnProducts, listProducts, weightedProducts } from "../../src/stats/weightedProducts.js";

const value = fc.double({ min: -10, max: 10, noNaN: true });
const columnsAndWeights = fc
  .tuple(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 1, max: 7 }))
  .chain(([size, rows]) =>
    fc.record({
      size: fc.constant(size),
      columns: fc.array(value, { minLength: size * rows, maxLength: size * rows }),
      weight: fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: rows, maxLength: rows }),
    }),
  );

it("multiplies fewer than four columns and more with a list, and leaves what stands before them", () => {
  // By hand: six columns of two rows with (1, 10); the sixth is not asked for.
  const columns = Float64Array.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 1, 2, 3);
  const into = Float64Array.of(-1, 0, 0, 0, 0, 0, -1);
  columnProducts(columns, 5, Float64Array.of(1, 10), into, 1);
  expect([...into]).toEqual([-1, 21, 43, 65, 87, 19, -1]);
  columnProducts(columns, 1, new Float64Array(0), into);
  expect(into[0]).toBe(0);
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

it("with several lists is the matrix product Y X', one row a list, be they even or odd in number", () => {
  const lists = fc.integer({ min: 1, max: 5 });
  fc.assert(
    fc.property(columnsAndWeights, lists, ({ size, columns, weight }, height) => {
      const rows = weight.length;
      const right = Array.from({ length: height * rows }, (_, at) => weight[at % rows]! - at);
      const wanted = matMul(right, transpose(columns, size, rows), height, rows, size);
      const made = listProducts(Float64Array.from(columns), Float64Array.from(right), rows);
      expect(made).toHaveLength(height * size);
      made.forEach((one, at) => expect(one).toBeCloseTo(wanted[at]!, 9));
    }),
  );
});
