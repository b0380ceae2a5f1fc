/** Ledoit and Wolf's shrinkage of a covariance matrix towards a multiple of the unit matrix. */
import { columnMeans, covariance } from "./linearAlgebra.js";

/** A covariance estimate that can be inverted even with more channels than sniffs. */
export interface ShrunkCovariance {
  /** Shape [columns]. */
  readonly mean: Float64Array;
  /** Shape [columns, columns], row-major. Positive definite unless every column is constant. */
  readonly covariance: Float64Array;
  /** Weight of the unit matrix, 0 (none) to 1 (only it). */
  readonly shrinkage: number;
}

/**
 * The well-conditioned covariance estimator of Ledoit and Wolf: (1 - s) S + s m I, with m the mean variance and s
 * the shrinkage that minimises the expected squared error.
 *
 * @param data - shape [rows, columns], one observation a row; divisor `rows` in S, as in the paper
 * @param rows - observations, >= 1
 * @param columns - variables, >= 1
 * @throws {RangeError} if the length does not fit the shape
 * @see Ledoit and Wolf, J. Multivariate Analysis 88 (2004), 365-411, section 3.2
 */
export function ledoitWolf(data: ArrayLike<number>, rows: number, columns: number): ShrunkCovariance {
  if (columns < 1) throw new RangeError("a covariance needs a column");
  const mean = columnMeans(data, rows, columns);
  const sample = covariance(data, rows, columns, 0);
  const meanVariance = trace(sample, columns) / columns;
  const sampleSquare = sumOfSquares(sample);
  const spread = sampleSquare - columns * meanVariance ** 2;
  const noise = (fourthMoment(data, mean, rows) / rows - sampleSquare) / rows;
  const shrinkage = spread > 0 ? Math.min(1, Math.max(0, noise) / spread) : 0;
  const shrunk = sample.map(
    (value, at) => (1 - shrinkage) * value + (at % (columns + 1) === 0 ? shrinkage * meanVariance : 0),
  );
  return { mean, covariance: shrunk, shrinkage };
}

function trace(matrix: Float64Array, size: number): number {
  let sum = 0;
  for (let i = 0; i < size; i += 1) sum += matrix[i * size + i]!;
  return sum;
}

function sumOfSquares(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]! ** 2;
  return sum;
}

/** Sum over rows of the fourth power of the length of the centred row: the squared norms of x x'. */
function fourthMoment(data: ArrayLike<number>, mean: Float64Array, rows: number): number {
  const columns = mean.length;
  let sum = 0;
  for (let row = 0; row < rows; row += 1) {
    let square = 0;
    for (let column = 0; column < columns; column += 1)
      square += (data[row * columns + column]! - mean[column]!) ** 2;
    sum += square ** 2;
  }
  return sum;
}
