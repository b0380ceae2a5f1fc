/** Sums over many rows, laid out column by column: what the normal equations of every regression take most time for. */

/**
 * Products of the first columns with one list: X' y.
 *
 * @param columns - X, column by column, shape [count or more, rows]
 * @param right - y, shape [rows]
 * @param into - takes the products, from the place `at` on
 */
export function columnProducts(
  columns: Float64Array,
  count: number,
  right: Float64Array,
  into: Float64Array,
  at = 0,
): void {
  const rows = right.length;
  let column = 0;
  // Four sums side by side: none waits for another, and each value of the list is looked up once for all.
  for (; column + 3 < count; column += 4) {
    const first = column * rows;
    const [second, third, fourth] = [first + rows, first + 2 * rows, first + 3 * rows];
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let row = 0; row < rows; row += 1) {
      const value = right[row]!;
      a += columns[first + row]! * value;
      b += columns[second + row]! * value;
      c += columns[third + row]! * value;
      d += columns[fourth + row]! * value;
    }
    into[at + column] = a;
    into[at + column + 1] = b;
    into[at + column + 2] = c;
    into[at + column + 3] = d;
  }
  for (; column < count; column += 1) {
    let sum = 0;
    for (let row = 0; row < rows; row += 1) sum += columns[column * rows + row]! * right[row]!;
    into[at + column] = sum;
  }
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
    columnProducts(columns, i + 1, scaled, products, i * size);
  }
  return products;
}
