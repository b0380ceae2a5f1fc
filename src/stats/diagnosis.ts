/** What a test result does to a belief: likelihood ratios and Bayes' rule in odds. */

/** How much likelier a result is when the group is present than when it is absent. */
export interface LikelihoodRatios {
  /** Of a positive result, sensitivity / (1 - specificity); Infinity for a test without false alarms. */
  readonly positive: number;
  /** Of a negative result, (1 - sensitivity) / specificity; Infinity if specificity is 0. */
  readonly negative: number;
}

/**
 * Likelihood ratios of a yes-or-no test.
 *
 * @param sensitivity - fraction
 * @param specificity - fraction
 * @returns both ratios; one that would be 0 / 0 (a result that never comes) is 1, as it says nothing
 * @throws {RangeError} if an argument is no fraction
 * @see Deeks and Altman, BMJ 329 (2004), 168-169
 */
export function likelihoodRatios(sensitivity: number, specificity: number): LikelihoodRatios {
  checkFraction(sensitivity);
  checkFraction(specificity);
  return {
    positive: ratio(sensitivity, 1 - specificity),
    negative: ratio(1 - sensitivity, specificity),
  };
}

/** Youden's index, sensitivity + specificity - 1. @see Youden, Cancer 3 (1950), 32-35 */
export function youdenIndex(sensitivity: number, specificity: number): number {
  checkFraction(sensitivity);
  checkFraction(specificity);
  return sensitivity + specificity - 1;
}

/**
 * Probability after a result, from the probability before it.
 *
 * @param prior - fraction; 0 and 1 are not moved by any finite evidence
 * @param likelihoodRatio - zero or more, Infinity allowed
 * @returns fraction
 * @throws {RangeError} if an argument is out of range, or a certain belief meets contrary certain evidence
 * @see Fagan, New England J. Medicine 293 (1975), 257
 */
export function posterior(prior: number, likelihoodRatio: number): number {
  checkFraction(prior);
  if (!(likelihoodRatio >= 0))
    throw new RangeError(`a likelihood ratio is zero or more, got ${likelihoodRatio}`);
  if (likelihoodRatio === Infinity && prior > 0) return 1;
  const joint = prior * likelihoodRatio;
  const evidence = joint + (1 - prior);
  if (!(evidence > 0)) throw new RangeError("belief and evidence contradict each other with certainty");
  return joint / evidence;
}

/** Likelihood ratio that a probability carries, once the share of present cases it was taught with is taken out. */
export function likelihoodRatioOf(probability: number, taughtShare: number): number {
  checkFraction(probability);
  if (!(taughtShare > 0 && taughtShare < 1))
    throw new RangeError(`the taught share must lie strictly between 0 and 1, got ${taughtShare}`);
  return (probability / (1 - probability)) * ((1 - taughtShare) / taughtShare);
}

function ratio(above: number, below: number): number {
  return above === 0 && below === 0 ? 1 : above / below;
}

function checkFraction(value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`a fraction lies between 0 and 1, got ${value}`);
}
