import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ledoitWolf } from "../../src/stats/ledoitWolf.js";
import {
  cholesky,
  choleskySolve,
  columnMeans,
  covariance,
  forwardSolve,
  identityMatrix,
  inverseSpd,
  matMul,
  matVec,
  solveSpd,
  transpose,
} from "../../src/stats/linearAlgebra.js";

const expectAll = (actual: ArrayLike<number>, wanted: readonly number[], digits = 12) => {
  expect(actual.length).toBe(wanted.length);
  wanted.forEach((value, at) => expect(actual[at]).toBeCloseTo(value, digits));
};

const value = fc.double({ min: -10, max: 10, noNaN: true });
/** A tall random matrix and the positive definite X'X + I that comes of it. */
const definite = fc.integer({ min: 1, max: 6 }).chain((size) =>
  fc.array(value, { minLength: size * size, maxLength: size * size }).map((cells) => {
    const gram = matMul(transpose(cells, size, size), cells, size, size, size);
    return { size, matrix: gram.map((cell, at) => cell + (at % (size + 1) === 0 ? 1 : 0)) };
  }),
);

describe("products", () => {
  it("multiplies shapes that are not square", () => {
    // By hand: [1 2 3; 4 5 6] [7 8; 9 10; 11 12].
    expect([...matMul([1, 2, 3, 4, 5, 6], [7, 8, 9, 10, 11, 12], 2, 3, 2)]).toEqual([58, 64, 139, 154]);
    expect([...matVec([1, 2, 3, 4, 5, 6], [1, 0, -1], 2, 3)]).toEqual([-2, -2]);
    expect([...transpose([1, 2, 3, 4, 5, 6], 2, 3)]).toEqual([1, 4, 2, 5, 3, 6]);
    expect([...matMul([1, 2, 3, 4, 5, 6], identityMatrix(3), 2, 3, 3)]).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it("refuses lengths that do not fit", () => {
    expect(() => matMul([1, 2, 3], [1, 2], 1, 2, 1)).toThrow(RangeError);
    expect(() => matMul([1, 2], [1, 2, 3], 1, 2, 1)).toThrow(RangeError);
    expect(() => transpose([1, 2, 3], 2, 2)).toThrow(RangeError);
    expect(() => cholesky([1, 2, 3], 2)).toThrow(RangeError);
    expect(() => forwardSolve([1], [1, 2], 1)).toThrow(RangeError);
    expect(() => columnMeans([], 0, 0)).toThrow(RangeError);
    expect(() => covariance([1, 2], 1, 2)).toThrow(RangeError);
  });
});

describe("symmetric positive definite matrices", () => {
  const matrix = [4, 2, 0.6, 2, 5, 1, 0.6, 1, 3];

  it("has the factor, inverse and solution that NumPy gives", () => {
    // Source: NumPy 2.4.6, numpy.linalg cholesky, inv and solve.
    expectAll(cholesky(matrix, 3), [2, 0, 0, 1, 2, 0, 0.3, 0.35, 1.6695807857064]);
    expectAll(
      inverseSpd(matrix, 3),
      [
        0.31390134529147984, -0.1210762331838565, -0.022421524663677132, -0.1210762331838565,
        0.2609865470852018, -0.06278026905829595, -0.02242152466367713, -0.06278026905829595,
        0.35874439461883406,
      ],
    );
    expectAll(solveSpd(matrix, [1, 2, 3], 3), [0.004484304932735439, 0.2125560538116592, 0.9282511210762331]);
  });

  it("solves what it multiplied", () => {
    fc.assert(
      fc.property(
        definite,
        fc.array(value, { minLength: 6, maxLength: 6 }),
        ({ size, matrix: spd }, cells) => {
          const wanted = cells.slice(0, size);
          const solved = solveSpd(spd, matVec(spd, wanted, size, size), size);
          wanted.forEach((one, at) => expect(solved[at]).toBeCloseTo(one, 6));
          const unit = matMul(spd, inverseSpd(spd, size), size, size, size);
          identityMatrix(size).forEach((one, at) => expect(unit[at]).toBeCloseTo(one, 6));
        },
      ),
    );
  });

  it("gives the same squared distance both ways", () => {
    fc.assert(
      fc.property(
        definite,
        fc.array(value, { minLength: 6, maxLength: 6 }),
        ({ size, matrix: spd }, cells) => {
          const x = cells.slice(0, size);
          const factor = cholesky(spd, size);
          const byHalf = forwardSolve(factor, x, size).reduce((sum, one) => sum + one * one, 0);
          const byWhole = choleskySolve(factor, x, size).reduce((sum, one, at) => sum + one * x[at]!, 0);
          expect(byHalf).toBeCloseTo(byWhole, 8);
        },
      ),
    );
  });

  it.each([
    ["a singular matrix", [1, 1, 1, 1]],
    ["an indefinite matrix", [1, 2, 2, 1]],
    ["a hole", [1, 0, 0, NaN]],
  ])("refuses %s", (_what, bad) => expect(() => cholesky(bad, 2)).toThrow(RangeError));
});

const FIVE_BY_THREE = [1, 2, 0.5, 2, 1, 1.5, 3, 5, 2, 4, 3.5, 2.5, 7, 6, 9];

describe("covariance", () => {
  it("is NumPy's", () => {
    // Source: NumPy 2.4.6, numpy.cov.
    expectAll(covariance(FIVE_BY_THREE, 5, 3), [5.3, 3.875, 7.45, 3.875, 4.25, 5.25, 7.45, 5.25, 11.425]);
    expectAll(columnMeans(FIVE_BY_THREE, 5, 3), [3.4, 3.5, 3.1]); // by hand
  });

  it("does not care where zero is, and scales with the square", () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 8, maxLength: 8 }), value, (data, shift) => {
        const here = covariance(data, 4, 2);
        const there = covariance(
          data.map((one) => 3 * one + shift),
          4,
          2,
        );
        here.forEach((one, at) => expect(there[at]).toBeCloseTo(9 * one, 8));
        expectAll(
          covariance(data, 4, 2, 0),
          [...here].map((one) => one * 0.75),
          10,
        );
      }),
    );
  });
});

describe("Ledoit-Wolf shrinkage", () => {
  it("is scikit-learn's, with more rows than columns", () => {
    // Source: scikit-learn 1.9.1, sklearn.covariance.ledoit_wolf.
    const shrunk = ledoitWolf(FIVE_BY_THREE, 5, 3);
    expect(shrunk.shrinkage).toBeCloseTo(0.5727454841526268, 12);
    expectAll(
      shrunk.covariance,
      [
        5.0151155552198885, 1.324488999126857, 2.5464369144503443, 1.324488999126857, 4.656221761908095,
        1.7944689665589675, 2.5464369144503443, 1.7944689665589675, 7.108662682872017,
      ],
      10,
    );
  });

  it("is scikit-learn's, with more columns than rows, and can then be inverted", () => {
    // Source: scikit-learn 1.9.1, sklearn.covariance.ledoit_wolf.
    const data = [1, 2, 0.5, 4, 2, 1, 1.5, -1, 3, 5, 2, 0];
    const shrunk = ledoitWolf(data, 3, 4);
    expect(shrunk.shrinkage).toBeCloseTo(0.5635900864445148, 12);
    expectAll(
      [shrunk.covariance[0]!, shrunk.covariance[1]!, shrunk.covariance[11]!, shrunk.covariance[15]!],
      [1.5042241562439316, 0.4364099135554852, -0.509144899148066, 3.2498638104658726],
      10,
    );
    expect(() => cholesky(covariance(data, 3, 4), 4)).toThrow(RangeError);
    expect(() => cholesky(shrunk.covariance, 4)).not.toThrow();
  });

  it("keeps the total variance, whatever it shrinks", () => {
    fc.assert(
      fc.property(fc.array(value, { minLength: 12, maxLength: 12 }), (data) => {
        const shrunk = ledoitWolf(data, 4, 3);
        const plain = covariance(data, 4, 3, 0);
        const sumOf = (cells: Float64Array) => cells[0]! + cells[4]! + cells[8]!;
        expect(sumOf(shrunk.covariance)).toBeCloseTo(sumOf(plain), 9);
        expect(shrunk.shrinkage).toBeGreaterThanOrEqual(0);
        expect(shrunk.shrinkage).toBeLessThanOrEqual(1);
      }),
    );
  });

  it("meets the edges: one row, one column, constant columns", () => {
    expect(ledoitWolf([1, 2], 1, 2)).toMatchObject({ shrinkage: 0, covariance: new Float64Array(4) });
    expect(ledoitWolf([1, 3], 2, 1).covariance[0]).toBeCloseTo(1, 14);
    expect(ledoitWolf([5, 5, 5, 5], 2, 2).covariance).toEqual(new Float64Array(4));
    expect(() => ledoitWolf([], 0, 2)).toThrow(RangeError);
    expect(() => ledoitWolf([1], 1, 0)).toThrow(RangeError);
  });
});
