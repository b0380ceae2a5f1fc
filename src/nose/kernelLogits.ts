import type { KernelModel } from "./models.js";

/** Steps of a standardised feature in which the middles of the bells are kept. */
export const MIDDLE_STEPS = 256;

/** Height of a bell where the mean squared difference from its middle is `square`; 1 at the middle. */
export function bellHeight(widths: readonly number[], square: number): number {
  let sum = 0;
  for (let i = 0; i < widths.length; i += 1) sum += Math.exp(-widths[i]! * square);
  return sum / widths.length;
}

/** Heights of all bells at a place, shape [bells]; `x` holds standardised features, shape [features]. */
export function bellHeights(model: Pick<KernelModel, "widths" | "middles">, x: Float64Array): Float64Array {
  const features = x.length;
  const heights = new Float64Array(model.middles.length / features);
  for (let bell = 0; bell < heights.length; bell += 1) {
    let square = 0;
    for (let i = 0; i < features; i += 1)
      square += (model.middles[bell * features + i]! / MIDDLE_STEPS - x[i]!) ** 2;
    heights[bell] = bellHeight(model.widths, square / features);
  }
  return heights;
}

/** Log-odds of each group, shape [groups]; `x` has shape [features]. */
export function kernelLogits(model: KernelModel, x: Float64Array): Float64Array {
  const logits = Float64Array.from(model.intercepts);
  const groups = logits.length;
  bellHeights(model, x).forEach((height, bell) => {
    for (let group = 0; group < groups; group += 1)
      logits[group]! += height * model.weights[bell * groups + group]!;
  });
  return logits;
}
