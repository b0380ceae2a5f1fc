/** Sums over many rows, laid out column by column: what the normal equations of every regression take most time for. */

/** Product of a stretch of the left list with the right one, in two sums that need not wait for each other. */
export function dot(left: Float64Array, from: number, right: Float64Array): number {
  let [even, odd] = [0, 0];
  const last = right.length - 1;
  for (let at = 0; at < last; at += 2) {
    even += left[from + at]! * right[at]!;
    odd += left[from + at + 1]! * right[at + 1]!;
  }
  return right.length % 2 === 1 ? even + odd + left[from + last]! * right[last]! : even + odd;
}

/**
 * Weighted products of columns with each other: X' W X.
 *
 * @param columns - X, column by column, shape [size, rows]
 * @param weight - shape [rows]
 * @returns shape [size, size], the lower triangle filled
 */
export function weightedProducts(columns: Float64Array, size: number, weight: Float64Array): Float64Array {
  const rows = weight.length;
  const products = new Float64Array(size * size);
  const scaled = new Float64Array(rows);
  for (let i = 0; i < size; i += 1) {
    for (let at = 0; at < rows; at += 1) scaled[at] = weight[at]! * columns[i * rows + at]!;
    for (let j = 0; j <= i; j += 1) products[i * size + j] = dot(columns, j * rows, scaled);
  }
  return products;
}
