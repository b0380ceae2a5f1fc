/** Readings further apart than this show drift and a stale jar along with the sniffers' difference. Common practice. */
export const SAME_SITTING_MS = 24 * 3_600_000;

interface Reading {
  /** ISO 8601 instant. */
  readonly at: string;
}

/**
 * Readings of one jar on two sniffers that belong together: each of the second with the nearest of the first within a
 * day. What lies further apart is left out.
 *
 * @returns the readings kept, of the first and of the second, each once and in their order
 */
export function nearInTime<First extends Reading, Second extends Reading>(
  first: readonly First[],
  second: readonly Second[],
): { readonly first: First[]; readonly second: Second[] } {
  const used = new Set<First>();
  const near = second.filter((reading) => {
    const apart = (one: Reading) => Math.abs(Date.parse(one.at) - Date.parse(reading.at));
    const nearest = first.reduce<First | null>(
      (best, one) => (best === null || apart(one) < apart(best) ? one : best),
      null,
    );
    if (nearest === null || apart(nearest) > SAME_SITTING_MS) return false;
    used.add(nearest);
    return true;
  });
  return { first: first.filter((one) => used.has(one)), second: near };
}
