/**
 * Checks predictions beside outcomes.
 *
 * @throws {RangeError} if there are none, the lengths differ, or an outcome is neither 0 nor 1
 */
export function checkOutcomes(predicted: ArrayLike<number>, happened: ArrayLike<number>): void {
  if (predicted.length === 0) throw new RangeError("needs a prediction");
  if (predicted.length !== happened.length)
    throw new RangeError(`${predicted.length} predictions, but ${happened.length} outcomes`);
  for (let i = 0; i < happened.length; i += 1)
    if (happened[i] !== 0 && happened[i] !== 1)
      throw new RangeError(`an outcome is 0 or 1, got ${happened[i]}`);
}

/** As {@link checkOutcomes}, and every prediction must be a fraction. */
export function checkProbabilities(predicted: ArrayLike<number>, happened: ArrayLike<number>): void {
  checkOutcomes(predicted, happened);
  for (let i = 0; i < predicted.length; i += 1)
    if (!(predicted[i]! >= 0 && predicted[i]! <= 1))
      throw new RangeError(`a probability is a fraction, got ${predicted[i]}`);
}
