/**
 * The least number of letters changed, added, left out or swapped that turns `query` into the beginning of `name`,
 * and into the whole of it.
 *
 * @param limit - whole, >= 0; distances above it come back as `limit + 1`
 * @see Damerau, Comm. ACM 7 (1964), 171-176, in the form that edits no letter twice (optimal string alignment)
 */
export function editDistance(query: string, name: string, limit: number): { prefix: number; whole: number } {
  const width = Math.min(name.length, query.length + limit);
  let before: number[] = [];
  let row = Array.from({ length: width + 1 }, (_, column) => column);
  for (let i = 1; i <= query.length; i += 1) {
    const next = [i];
    let least = i;
    for (let j = 1; j <= width; j += 1) {
      const same = query[i - 1] === name[j - 1];
      const swap = i > 1 && j > 1 && query[i - 1] === name[j - 2] && query[i - 2] === name[j - 1];
      const cost = Math.min(
        (row[j] ?? limit) + 1,
        (next[j - 1] ?? limit) + 1,
        (row[j - 1] ?? limit) + (same ? 0 : 1),
        swap ? (before[j - 2] ?? limit) + 1 : limit + 1,
      );
      next.push(cost);
      least = Math.min(least, cost);
    }
    if (least > limit) return { prefix: limit + 1, whole: limit + 1 };
    before = row;
    row = next;
  }
  const whole = width === name.length ? (row[width] ?? limit + 1) : limit + 1;
  return { prefix: Math.min(limit + 1, ...row), whole: Math.min(limit + 1, whole) };
}
