import type { Forest } from "./models.js";

/** Mean share of present plates over the trees as log-odds, kept finite; `x` has shape [features]. */
export function forestLogits(forest: Forest, x: Float64Array, groups: number): Float64Array {
  const share = new Float64Array(groups);
  for (let tree = 0; tree < forest.trees; tree += 1) {
    let node = forest.roots[tree]!;
    while (forest.feature[node]! >= 0)
      node = x[forest.feature[node]!]! <= forest.threshold[node]! ? node + 1 : forest.right[node]!;
    const leaf = forest.right[node]! * groups;
    for (let group = 0; group < groups; group += 1) share[group]! += forest.leaves[leaf + group]! / 255;
  }
  // Half a vote on either side: no count of agreeing trees is certainty (Jeffreys' rule, common practice).
  return share.map((sum) => Math.log((sum + 0.5) / (forest.trees - sum + 0.5)));
}
