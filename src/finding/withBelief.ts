import type { GroupNose } from "../nose/nose.js";
/** A belief from before the sniff, and what the sniff makes of it. */
export interface Belief {
  readonly before: number;
  readonly likelihoodRatio: number;
  readonly after: number;
}

/**
 * Bayes' rule in odds: odds after = odds before x likelihood ratio. The ratio is what the sniff did to the share of
 * present plates that the nose was calibrated on.
 *
 * @param probability - calibrated probability, strictly between 0 and 1
 * @param taughtShare - share of present plates behind that probability, strictly between 0 and 1
 * @param before - belief from before the sniff, strictly between 0 and 1
 * @throws {RangeError} if an argument is out of range
 * @see Fagan, New England J. Medicine 293 (1975), 257
 */
export function withBelief(probability: number, taughtShare: number, before: number): Belief {
  for (const value of [probability, taughtShare, before])
    if (!(value > 0 && value < 1)) throw new RangeError(`a belief lies between 0 and 1, got ${value}`);
  const odds = (share: number) => share / (1 - share);
  const likelihoodRatio = odds(probability) / odds(taughtShare);
  const after = odds(before) * likelihoodRatio;
  return { before, likelihoodRatio, after: after / (1 + after) };
}

/** Share of present plates among those of known truth, the odds that a calibrated probability starts from. */
export function taughtShare(group: Pick<GroupNose, "platesPresent" | "platesAbsent">): number {
  return group.platesPresent / (group.platesPresent + group.platesAbsent);
}
