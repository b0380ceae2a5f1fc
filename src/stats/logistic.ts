/** Between log-odds and probability. */

/** Probability of a log-odds, 1 / (1 + e^-x), without overflow. */
export function sigmoid(logOdds: number): number {
  if (logOdds >= 0) return 1 / (1 + Math.exp(-logOdds));
  const odds = Math.exp(logOdds);
  return odds / (1 + odds);
}

/**
 * Keeps a probability from 0 and 1 by a margin. Only the last three margins before either end bend, up to a margin of
 * 1/6 without a corner: in between the calibration means what it says, and no clip makes two plates that differ alike.
 *
 * @param probability - 0 to 1
 * @param margin - 0 to 0.5
 */
export function withinMargin(probability: number, margin: number): number {
  if (probability > 0.5) return 1 - withinMargin(1 - probability, margin);
  const bend = bendOf(margin);
  if (probability >= bend) return probability;
  const share = probability / bend;
  return margin + ((bend - margin) * share * (1 + share)) / 2;
}

/** Slope of {@link withinMargin} in the probability. */
export function slopeWithinMargin(probability: number, margin: number): number {
  const bend = bendOf(margin);
  const toEnd = Math.min(probability, 1 - probability);
  return toEnd >= bend ? 1 : ((1 - margin / bend) * (1 + (2 * toEnd) / bend)) / 2;
}

/** How far from either end a margin is felt. A parabola that starts at the margin joins the diagonal there. */
function bendOf(margin: number): number {
  return Math.min(3 * margin, 0.5);
}

/** Log-odds of a probability; 0 gives -Infinity, 1 gives Infinity. @throws {RangeError} if it is no fraction */
export function logit(probability: number): number {
  if (!(probability >= 0 && probability <= 1))
    throw new RangeError(`a probability is a fraction, got ${probability}`);
  return Math.log(probability) - Math.log1p(-probability);
}

/** ln(1 + e^x) without overflow. */
export function softplus(x: number): number {
  return Math.max(0, x) + Math.log1p(Math.exp(-Math.abs(x)));
}

/**
 * Softmax of logits divided by a temperature.
 *
 * @param logits - shape [labels], labels >= 1
 * @param temperature - positive; above 1 flattens, below 1 sharpens
 * @returns probabilities, shape [labels], that add up to 1
 * @throws {RangeError} if there are no logits or the temperature is not positive
 */
export function softmax(logits: ArrayLike<number>, temperature = 1): Float64Array {
  if (logits.length === 0) throw new RangeError("softmax needs a logit");
  if (!(temperature > 0)) throw new RangeError(`temperature must be positive, got ${temperature}`);
  const largest = Float64Array.from(logits).reduce((a, b) => Math.max(a, b));
  const odds = Float64Array.from(logits, (value) => Math.exp((value - largest) / temperature));
  const sum = odds.reduce((a, b) => a + b);
  return odds.map((value) => value / sum);
}
