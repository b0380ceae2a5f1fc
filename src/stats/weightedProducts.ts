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
 * The same with several lists: X' Y, one row a list.
 *
 * @param columns - X, column by column, shape [count, rows]
 * @param lists - Y, list by list, shape [lists, rows]
 * @param rows - length of each column and each list, whole, >= 1
 * @returns shape [lists, count]
 */
export function listProducts(columns: Float64Array, lists: Float64Array, rows: number): Float64Array {
  const [count, height] = [columns.length / rows, lists.length / rows];
  const products = new Float64Array(height * count);
  for (let list = 0; list < height; list += 2) {
    const some = lists.subarray(list * rows, (list + 2) * rows);
    productsOfSome(columns, count, some, rows, products, list * count, count);
  }
  return products;
}

/** Products with one list or two, shape [1 or 2, rows]; those with the second stand `apart` places after the first's. */
function productsOfSome(
  columns: Float64Array,
  count: number,
  lists: Float64Array,
  rows: number,
  into: Float64Array,
  at: number,
  apart: number,
): void {
  if (lists.length === rows) {
    columnProducts(columns, count, lists, into, at);
    return;
  }
  const next = at + apart;
  let column = 0;
  // Eight sums side by side: every value that is looked up serves twice or four times.
  for (; column + 3 < count; column += 4) {
    const first = column * rows;
    const [second, third, fourth] = [first + rows, first + 2 * rows, first + 3 * rows];
    let [a, b, c, d, e, f, g, h] = [0, 0, 0, 0, 0, 0, 0, 0];
    for (let row = 0; row < rows; row += 1) {
      const one = lists[row]!;
      const other = lists[rows + row]!;
      let value = columns[first + row]!;
      a += value * one;
      e += value * other;
      value = columns[second + row]!;
      b += value * one;
      f += value * other;
      value = columns[third + row]!;
      c += value * one;
      g += value * other;
      value = columns[fourth + row]!;
      d += value * one;
      h += value * other;
    }
    into[at + column] = a;
    into[at + column + 1] = b;
    into[at + column + 2] = c;
    into[at + column + 3] = d;
    into[next + column] = e;
    into[next + column + 1] = f;
    into[next + column + 2] = g;
    into[next + column + 3] = h;
  }
  const rest = columns.subarray(column * rows);
  columnProducts(rest, count - column, lists.subarray(0, rows), into, at + column);
  columnProducts(rest, count - column, lists.subarray(rows), into, next + column);
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
  const pair = new Float64Array(2 * rows);
  for (let i = 0; i < size; i += 2) {
    const upto = Math.min(size, i + 2);
    const scaled = upto === i + 2 ? pair : pair.subarray(0, rows);
    for (let at = 0, one = i * rows; at < scaled.length; at += rows)
      for (let row = 0; row < rows; row += 1, one += 1) scaled[at + row] = weight[row]! * columns[one]!;
    productsOfSome(columns, upto, scaled, rows, products, i * size, size);
  }
  return products;
}
