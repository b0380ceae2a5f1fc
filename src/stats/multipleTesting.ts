/**
 * p-values adjusted for being many, so that calling those at or below q keeps the false discovery rate at q.
 *
 * @param pValues - shape [n], fractions, in any order
 * @returns adjusted values in the same order, shape [n]
 * @throws {RangeError} if a value is no fraction
 * @see Benjamini and Hochberg, J. Royal Statistical Society B 57 (1995), 289-300
 */
export function benjaminiHochberg(pValues: ArrayLike<number>): Float64Array {
  const order = Array.from(pValues, (p, at) => ({ p, at }));
  for (const { p } of order)
    if (!(p >= 0 && p <= 1)) throw new RangeError(`a p-value is a fraction, got ${p}`);
  order.sort((first, second) => second.p - first.p);
  const adjusted = new Float64Array(order.length);
  let least = 1;
  order.forEach(({ p, at }, place) => {
    least = Math.min(least, (p * order.length) / (order.length - place));
    adjusted[at] = least;
  });
  return adjusted;
}
