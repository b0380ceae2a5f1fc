/** y = scale * x^exponent, fitted on logarithms. */
export interface PowerFit {
  readonly scale: number;
  readonly exponent: number;
}

/**
 * Least squares line through ln y over ln x: the inverse power law by which learning curves usually fall.
 *
 * @param xs - shape [n], n >= 2, positive, not all equal
 * @param ys - shape [n], positive
 * @throws {RangeError} if a value is not positive, the lengths differ, or the xs are all equal
 * @see Figueroa and others, BMC Medical Informatics and Decision Making 12 (2012), 8 (sample size from such a curve)
 */
export function powerFit(xs: readonly number[], ys: readonly number[]): PowerFit {
  if (xs.length !== ys.length || xs.length < 2) throw new RangeError("a curve needs two points or more");
  if (![...xs, ...ys].every((value) => value > 0 && Number.isFinite(value)))
    throw new RangeError("a power law holds for positive numbers");
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const logXs = xs.map(Math.log);
  const logYs = ys.map(Math.log);
  const [centreX, centreY] = [mean(logXs), mean(logYs)];
  const spread = mean(logXs.map((x) => (x - centreX) ** 2));
  if (spread === 0) throw new RangeError("a curve needs different xs");
  const exponent = mean(logXs.map((x, i) => (x - centreX) * (logYs[i]! - centreY))) / spread;
  return { scale: Math.exp(centreY - exponent * centreX), exponent };
}
