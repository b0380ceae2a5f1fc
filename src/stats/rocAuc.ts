import { checkOutcomes } from "./checkPairs.js";

/**
 * Area under the ROC curve: the chance that a present plate scores above an absent one, ties counted half.
 *
 * @param scores - shape [n], larger speaks for the event; any scale
 * @param happened - outcomes, shape [n], 0 or 1
 * @returns a fraction 0..1, or null if only one kind of outcome is there
 * @throws {RangeError} if n = 0, the lengths differ or an outcome is neither 0 nor 1
 * @see Hanley and McNeil, Radiology 143 (1982), 29-36; Mann and Whitney, Ann. Math. Stat. 18 (1947), 50-60
 */
export function rocAuc(scores: ArrayLike<number>, happened: ArrayLike<number>): number | null {
  checkOutcomes(scores, happened);
  const ranks = midRanks(scores);
  let positives = 0;
  let rankSum = 0;
  for (let i = 0; i < ranks.length; i += 1) {
    positives += happened[i]!;
    rankSum += happened[i]! * ranks[i]!;
  }
  const negatives = ranks.length - positives;
  if (positives === 0 || negatives === 0) return null;
  return (rankSum - (positives * (positives + 1)) / 2) / (positives * negatives);
}

/** Ranks from 1, ties sharing the mean of theirs. @throws {RangeError} if a value is not a number */
export function midRanks(values: ArrayLike<number>): Float64Array {
  const order = Array.from(values, (value, at) => ({ value, at }));
  if (order.some(({ value }) => Number.isNaN(value))) throw new RangeError("a score must be a number");
  order.sort((a, b) => (a.value < b.value ? -1 : a.value > b.value ? 1 : 0));
  const ranks = new Float64Array(order.length);
  for (let first = 0; first < order.length;) {
    let after = first + 1;
    while (after < order.length && order[after]!.value === order[first]!.value) after += 1;
    for (let i = first; i < after; i += 1) ranks[order[i]!.at] = (first + 1 + after) / 2;
    first = after;
  }
  return ranks;
}
