/** Held-out scores of one truth, counted by plate: several sniffs of one plate share its one vote. */
export interface ScoreLadder {
  /** Plates, or plates outside a fold. */
  plates(outsideFold: number | null): number;
  /** Plates whose score is at or below `score`; a plate with several sniffs counts in part. */
  atOrBelow(score: number, outsideFold: number | null): number;
  /** Plates whose score is at or above `score`. */
  atOrAbove(score: number, outsideFold: number | null): number;
}

interface Step {
  readonly score: number;
  readonly vote: number;
}

/** Keeps 1/3 + 1/3 + 1/3 from counting as less than one plate. */
const VOTE_GUARD = 1e-9;

/**
 * Orders held-out scores for fast counting.
 *
 * @param scores - log-odds, shape [n]
 * @param plates - number of each score's plate, shape [n]
 * @param folds - number of each score's fold, shape [n]
 * @param wanted - which of them to count, shape [n]
 */
export function scoreLadder(
  scores: Float32Array,
  plates: Int16Array,
  folds: Int16Array,
  wanted: readonly boolean[],
): ScoreLadder {
  const sniffsOf = new Map<number, number>();
  wanted.forEach((want, i) => {
    const plate = plates[i] ?? -1;
    if (want) sniffsOf.set(plate, (sniffsOf.get(plate) ?? 0) + 1);
  });
  const byFold = new Map<number, Step[]>();
  const all: Step[] = [];
  wanted.forEach((want, i) => {
    if (!want) return;
    const step = { score: scores[i] ?? 0, vote: 1 / (sniffsOf.get(plates[i] ?? -1) ?? 1) };
    const fold = folds[i] ?? 0;
    all.push(step);
    const own = byFold.get(fold);
    if (own === undefined) byFold.set(fold, [step]);
    else own.push(step);
  });
  const whole = counter(all);
  const parts = new Map([...byFold].map(([fold, steps]) => [fold, counter(steps)]));
  const less = (fold: number | null, count: (one: Counter) => number) => {
    const part = fold === null ? undefined : parts.get(fold);
    return count(whole) - (part === undefined ? 0 : count(part));
  };
  return {
    plates: (fold) => Math.round(less(fold, (one) => one.total)),
    atOrBelow: (score, fold) => less(fold, (one) => one.atOrBelow(score)) + VOTE_GUARD,
    atOrAbove: (score, fold) => less(fold, (one) => one.total - one.below(score)) + VOTE_GUARD,
  };
}

interface Counter {
  readonly total: number;
  atOrBelow(score: number): number;
  below(score: number): number;
}

function counter(steps: readonly Step[]): Counter {
  const sorted = [...steps].sort((a, b) => a.score - b.score);
  const sums = [0];
  for (const { vote } of sorted) sums.push((sums.at(-1) ?? 0) + vote);
  const votesBefore = (isAfter: (score: number) => boolean) => {
    let low = 0;
    let high = sorted.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (isAfter(sorted[middle]?.score ?? Infinity)) high = middle;
      else low = middle + 1;
    }
    return sums[low] ?? 0;
  };
  return {
    total: sums.at(-1) ?? 0,
    atOrBelow: (score) => votesBefore((held) => held > score),
    below: (score) => votesBefore((held) => held >= score),
  };
}
