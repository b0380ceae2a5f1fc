import type { Rate, Scores } from "../nose/report.js";
import { clopperPearson } from "../stats/proportionInterval.js";
import { balancedAccuracy, brierScore, expectedCalibrationError, logLoss, rocAuc } from "../stats/scores.js";

/** Share of the most decided answers in the usual summary of risk against coverage. Common practice. */
const COVERAGE = 0.8;

/**
 * Scores of held-out probabilities against the truth, sniff by sniff; shapes [n], n >= 1.
 *
 * @param taughtShares - share of present plates among those that each sniff's nose was taught on, shape [n]
 */
export function scoreGroup(
  probabilities: ArrayLike<number>,
  truth: ArrayLike<number>,
  taughtShares: ArrayLike<number>,
): Scores {
  const answered = Uint8Array.from(probabilities, (p) => (p >= 0.5 ? 1 : 0));
  const wrong = answered.map((one, i) => (one === truth[i] ? 0 : 1));
  const surest = [...wrong.keys()].sort(
    (a, b) => Math.abs(probabilities[b]! - 0.5) - Math.abs(probabilities[a]! - 0.5),
  );
  const kept = surest.slice(0, Math.max(1, Math.round(COVERAGE * wrong.length)));
  return {
    sniffs: wrong.length,
    balancedAccuracy: balancedAccuracy(answered, truth),
    evenBalancedAccuracy: balancedAccuracy(
      Uint8Array.from(probabilities, (p, i) => (p > taughtShares[i]! ? 1 : 0)),
      truth,
    ),
    auc: rocAuc(probabilities, truth),
    logLoss: logLoss(probabilities, truth),
    brier: brierScore(probabilities, truth),
    ece: expectedCalibrationError(probabilities, truth),
    error: wrong.reduce((sum, one) => sum + one, 0) / wrong.length,
    errorAt80: kept.reduce((sum, i) => sum + wrong[i]!, 0) / kept.length,
  };
}

/** A counted rate with its exact 95 % interval. */
export function rateOf(events: number, trials: number): Rate {
  return { events, trials, ...clopperPearson(events, trials) };
}
