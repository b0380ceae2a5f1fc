/** Between log-odds and probability. */

/** Probability of a log-odds, 1 / (1 + e^-x), without overflow. */
export function sigmoid(logOdds: number): number {
  if (logOdds >= 0) return 1 / (1 + Math.exp(-logOdds));
  const odds = Math.exp(logOdds);
  return odds / (1 + odds);
}

/**
 * Draws a probability in from 0 and 1, as if the truth were noted wrongly once in 1 / margin times. A squeeze and no
 * clip: two plates that differ keep their order.
 */
export function withinMargin(probability: number, margin: number): number {
  return margin + (1 - 2 * margin) * probability;
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
