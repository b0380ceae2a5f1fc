/** Small dense matrices: Float64Array, row-major, with their shapes given in words each time. */
import { weightedProducts } from "./weightedProducts.js";

/**
 * Matrix product.
 *
 * @param left - shape [rows, inner]
 * @param right - shape [inner, columns]
 * @returns shape [rows, columns]
 * @throws {RangeError} if a length does not fit its shape
 */
export function matMul(
  left: ArrayLike<number>,
  right: ArrayLike<number>,
  rows: number,
  inner: number,
  columns: number,
): Float64Array {
  checkLength(left, rows * inner, "left");
  checkLength(right, inner * columns, "right");
  const product = new Float64Array(rows * columns);
  for (let i = 0; i < rows; i += 1)
    for (let k = 0; k < inner; k += 1) {
      const factor = left[i * inner + k]!;
      for (let j = 0; j < columns; j += 1) product[i * columns + j]! += factor * right[k * columns + j]!;
    }
  return product;
}

/** Product of a matrix, shape [rows, columns], with a vector, shape [columns]. @throws {RangeError} on a wrong length */
export function matVec(
  matrix: ArrayLike<number>,
  vector: ArrayLike<number>,
  rows: number,
  columns: number,
): Float64Array {
  return matMul(matrix, vector, rows, columns, 1);
}

/** Transpose of a matrix, shape [rows, columns]; gives shape [columns, rows]. @throws {RangeError} on a wrong length */
export function transpose(matrix: ArrayLike<number>, rows: number, columns: number): Float64Array {
  checkLength(matrix, rows * columns, "matrix");
  const turned = new Float64Array(rows * columns);
  for (let i = 0; i < rows; i += 1)
    for (let j = 0; j < columns; j += 1) turned[j * rows + i] = matrix[i * columns + j]!;
  return turned;
}

/** Unit matrix, shape [size, size]. */
export function identityMatrix(size: number): Float64Array {
  const unit = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) unit[i * size + i] = 1;
  return unit;
}

/**
 * Cholesky factor L of a symmetric positive definite matrix A = L L'.
 *
 * @param matrix - shape [size, size]; only the lower triangle is read
 * @returns lower triangular, shape [size, size]
 * @throws {RangeError} if the length does not fit, or the matrix is not positive definite (shrink it first)
 * @see Golub and Van Loan, Matrix Computations, section 4.2
 */
export function cholesky(matrix: ArrayLike<number>, size: number): Float64Array {
  checkLength(matrix, size * size, "matrix");
  const factor = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1)
    for (let j = 0; j <= i; j += 1) {
      // Two sums side by side: neither has to wait for the other.
      let [even, odd] = [matrix[i * size + j]!, 0];
      const [here, there] = [i * size, j * size];
      for (let k = 0; k + 1 < j; k += 2) {
        even -= factor[here + k]! * factor[there + k]!;
        odd -= factor[here + k + 1]! * factor[there + k + 1]!;
      }
      if (j % 2 === 1) even -= factor[here + j - 1]! * factor[there + j - 1]!;
      const rest = even + odd;
      if (i === j && !(rest > 0)) throw new RangeError("the matrix is not positive definite");
      factor[i * size + j] = i === j ? Math.sqrt(rest) : rest / factor[j * size + j]!;
    }
  return factor;
}

/**
 * Solves L y = b for a lower triangular L, as the first half of a Cholesky solution. The sum of squares of y is
 * b' A^-1 b, a squared Mahalanobis distance.
 *
 * @param factor - lower triangular with a diagonal free of zeros, shape [size, size]
 * @param vector - b, shape [size]
 * @throws {RangeError} on a wrong length
 */
export function forwardSolve(
  factor: ArrayLike<number>,
  vector: ArrayLike<number>,
  size: number,
): Float64Array {
  checkLength(factor, size * size, "factor");
  checkLength(vector, size, "vector");
  const solution = new Float64Array(size);
  for (let i = 0; i < size; i += 1) {
    let rest = vector[i]!;
    for (let k = 0; k < i; k += 1) rest -= factor[i * size + k]! * solution[k]!;
    solution[i] = rest / factor[i * size + i]!;
  }
  return solution;
}

/** Solves A x = b from the Cholesky factor of A, shape [size, size]. @throws {RangeError} on a wrong length */
export function choleskySolve(
  factor: ArrayLike<number>,
  vector: ArrayLike<number>,
  size: number,
): Float64Array {
  const solution = forwardSolve(factor, vector, size);
  for (let i = size - 1; i >= 0; i -= 1) {
    let rest = solution[i]!;
    for (let k = i + 1; k < size; k += 1) rest -= factor[k * size + i]! * solution[k]!;
    solution[i] = rest / factor[i * size + i]!;
  }
  return solution;
}

/** Solves A x = b, A symmetric positive definite, shape [size, size]. @throws {RangeError} as {@link cholesky} */
export function solveSpd(matrix: ArrayLike<number>, vector: ArrayLike<number>, size: number): Float64Array {
  return choleskySolve(cholesky(matrix, size), vector, size);
}

/** Inverse of a symmetric positive definite matrix, shape [size, size]. @throws {RangeError} as {@link cholesky} */
export function inverseSpd(matrix: ArrayLike<number>, size: number): Float64Array {
  const factor = cholesky(matrix, size);
  const inverse = new Float64Array(size * size);
  for (let column = 0; column < size; column += 1) {
    const unit = new Float64Array(size);
    unit[column] = 1;
    choleskySolve(factor, unit, size).forEach((value, row) => (inverse[row * size + column] = value));
  }
  return inverse;
}

/** Mean of each column of `data`, shape [rows, columns], rows >= 1. @throws {RangeError} on a wrong shape */
export function columnMeans(data: ArrayLike<number>, rows: number, columns: number): Float64Array {
  checkLength(data, rows * columns, "data");
  if (rows < 1) throw new RangeError("a mean needs a row");
  const means = new Float64Array(columns);
  for (let at = 0; at < rows * columns; at += 1) means[at % columns]! += data[at]!;
  return means.map((sum) => sum / rows);
}

/**
 * Covariance matrix of the columns of `data`.
 *
 * @param data - shape [rows, columns], one observation a row
 * @param lostDegrees - 1 for the unbiased estimate (divisor rows - 1), 0 for the divisor rows
 * @returns shape [columns, columns], in the square of the data's unit
 * @throws {RangeError} if a length does not fit, or rows <= lostDegrees
 */
export function covariance(
  data: ArrayLike<number>,
  rows: number,
  columns: number,
  lostDegrees: 0 | 1 = 1,
): Float64Array {
  if (rows <= lostDegrees) throw new RangeError(`a covariance needs more than ${rows} rows`);
  const means = columnMeans(data, rows, columns);
  const centred = new Float64Array(rows * columns);
  for (let row = 0; row < rows; row += 1)
    for (let i = 0; i < columns; i += 1) centred[i * rows + row] = data[row * columns + i]! - means[i]!;
  const matrix = weightedProducts(centred, columns, new Float64Array(rows).fill(1 / (rows - lostDegrees)));
  for (let i = 0; i < columns; i += 1)
    for (let j = 0; j < i; j += 1) matrix[j * columns + i] = matrix[i * columns + j]!;
  return matrix;
}

function checkLength(values: ArrayLike<number>, wanted: number, name: string): void {
  if (values.length !== wanted)
    throw new RangeError(`${name} must hold ${wanted} values, got ${values.length}`);
}
