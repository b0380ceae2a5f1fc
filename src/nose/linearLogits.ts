import type { LinearModel } from "./models.js";

/** Log-odds of each group under a linear model; `x` has shape [features]. Gives shape [groups]. */
export function linearLogits(model: LinearModel, x: Float64Array): Float64Array {
  const features = x.length;
  return Float64Array.from(model.intercepts, (intercept, group) => {
    let sum = intercept;
    for (let i = 0; i < features; i += 1) sum += model.weights[group * features + i]! * x[i]!;
    return sum;
  });
}
