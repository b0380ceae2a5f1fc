import type { NetEnsemble } from "./models.js";

/** Mean log-odds of the nets for each group; `x` has shape [features]. Gives shape [groups]. */
export function netLogits(nets: NetEnsemble, x: Float64Array): Float64Array {
  const groups = nets.outBias.length / nets.members;
  const features = x.length;
  const mean = new Float64Array(groups);
  const layer = new Float64Array(nets.hidden);
  for (let member = 0; member < nets.members; member += 1) {
    for (let unit = 0; unit < nets.hidden; unit += 1) layer[unit] = nets.inBias[member * nets.hidden + unit]!;
    for (let i = 0; i < features; i += 1) {
      const row = (member * features + i) * nets.hidden;
      for (let unit = 0; unit < nets.hidden; unit += 1) layer[unit]! += x[i]! * nets.inWeights[row + unit]!;
    }
    for (let group = 0; group < groups; group += 1) {
      let sum = nets.outBias[member * groups + group]!;
      for (let unit = 0; unit < nets.hidden; unit += 1)
        sum += Math.tanh(layer[unit]!) * nets.outWeights[(member * nets.hidden + unit) * groups + group]!;
      mean[group]! += sum / nets.members;
    }
  }
  return mean;
}
