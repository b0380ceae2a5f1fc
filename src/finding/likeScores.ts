import type { GroupHorizon } from "../nose/nose.js";
import type { Interval } from "../stats/interval.js";
import { wilsonInterval } from "../stats/proportionInterval.js";

/** Fewest held-out sniffs that an interval rests on, and the share of all that count as like. Common practice. */
const LEAST_LIKE = 10;
const LIKE_SHARE = 0.2;

/**
 * How often the held-out sniffs with the most similar probabilities held the group: Wilson's 95 % interval, widened
 * where needed to hold the probability itself.
 *
 * @param truth - 1 present, 0 absent, shape [held out]
 */
export function likeScores(own: GroupHorizon, truth: Int16Array, probability: number): Interval {
  const near = Array.from(own.probabilities, (held, i) => ({ gap: Math.abs(held - probability), i })).sort(
    (a, b) => a.gap - b.gap,
  );
  const like = near.slice(0, Math.max(LEAST_LIKE, Math.round(LIKE_SHARE * near.length)));
  const present = like.filter(({ i }) => truth[i] === 1).length;
  const { low, high } = wilsonInterval(present, like.length);
  return { low: Math.min(low, probability), high: Math.max(high, probability) };
}
