/** Eigenvectors of a symmetric matrix, largest eigenvalue first. */
export interface Eigen {
  /** Shape [size]. */
  readonly values: Float64Array;
  /** Row i is the eigenvector of values[i], shape [size, size]. */
  readonly vectors: Float64Array;
}

const SWEEPS = 12;

/**
 * Cyclic Jacobi rotations.
 *
 * @param matrix - symmetric, shape [size, size]
 * @see Golub and Van Loan, Matrix Computations (2013), section 8.5
 */
export function symmetricEigen(matrix: Float64Array, size: number): Eigen {
  const a = Float64Array.from(matrix);
  const v = new Float64Array(size * size);
  for (let i = 0; i < size; i += 1) v[i * size + i] = 1;
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    let off = 0;
    for (let p = 0; p < size; p += 1)
      for (let q = p + 1; q < size; q += 1) {
        off += a[p * size + q]! ** 2;
        rotate(a, v, size, p, q);
      }
    if (off < 1e-18) break;
  }
  const order = Array.from({ length: size }, (_, i) => i).sort((i, j) => a[j * size + j]! - a[i * size + i]!);
  const vectors = new Float64Array(size * size);
  order.forEach((from, to) => {
    for (let i = 0; i < size; i += 1) vectors[to * size + i] = v[i * size + from]!;
  });
  return { values: Float64Array.from(order, (i) => a[i * size + i]!), vectors };
}

function rotate(a: Float64Array, v: Float64Array, size: number, p: number, q: number): void {
  const apq = a[p * size + q]!;
  if (Math.abs(apq) < 1e-14) return;
  const theta = (a[q * size + q]! - a[p * size + p]!) / (2 * apq);
  const t = (theta >= 0 ? 1 : -1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
  const c = 1 / Math.sqrt(t * t + 1);
  const s = t * c;
  for (let k = 0; k < size; k += 1) {
    const left = a[k * size + p]!;
    const right = a[k * size + q]!;
    a[k * size + p] = c * left - s * right;
    a[k * size + q] = s * left + c * right;
  }
  for (let k = 0; k < size; k += 1) {
    const top = a[p * size + k]!;
    const low = a[q * size + k]!;
    a[p * size + k] = c * top - s * low;
    a[q * size + k] = s * top + c * low;
    const left = v[k * size + p]!;
    const right = v[k * size + q]!;
    v[k * size + p] = c * left - s * right;
    v[k * size + q] = s * left + c * right;
  }
}
