import { featureCount, otherView, recipeOf } from "../features/recipe.js";
import { type Forest, type KernelModel, MODEL_KINDS } from "./models.js";
import { type GroupNose, type HorizonNose, type InputMap, type Nose, TRANSFERRED_FORMAT } from "./nose.js";

/** Kinds of models that the first version mixed. */
const FIRST_KINDS = 5;

/** The first place where two parts of a nose do not fit together, or null if all do. */
export function shapeFault(nose: Nose): string | null {
  const recipe = recipeOf(nose.recipe);
  if (recipe === undefined) return "recipe";
  const channels = nose.sniffer.channels.length;
  const features = featureCount(recipe, channels);
  const otherFeatures = featureCount(otherView(recipe), channels);
  const groups = nose.groups.length;
  for (const [i, group] of nose.groups.entries()) {
    const fault = groupFault(group, nose.horizons.length);
    const names = nose.plateNames?.length ?? Infinity;
    if (group.plate.some((plate) => plate < 0 || plate >= names)) return `groups.${i}.plate`;
    if (fault !== null) return `groups.${i}.${fault}`;
  }
  if (nose.nets !== null) {
    const { members, hidden, inWeights, inBias, outWeights, outBias } = nose.nets;
    const fits =
      members > 0 &&
      hidden > 0 &&
      inWeights.length === members * features * hidden &&
      inBias.length === members * hidden &&
      outWeights.length === members * hidden * groups &&
      outBias.length === members * groups;
    if (!fits) return "nets";
  }
  if (transferFault(nose)) return "transfer";
  for (const [i, horizon] of nose.horizons.entries()) {
    const fault = horizonFault(horizon, features, groups) ?? secondFault(horizon, otherFeatures, groups);
    if (fault !== null) return `horizons.${i}.${fault}`;
    if (i > 0 && horizon.fromMs < nose.horizons[i - 1]!.fromMs) return `horizons.${i}.fromMs`;
  }
  return null;
}

/** A map where the format says that there is one, and only there, over all channels. */
function transferFault({ format, transfer, sniffer }: Nose): boolean {
  if ((format === TRANSFERRED_FORMAT) !== (transfer !== undefined)) return true;
  const channels = sniffer.channels.length;
  return (
    transfer !== undefined &&
    (transfer.map.matrix.length !== channels * channels || transfer.map.offset.length !== channels)
  );
}

function groupFault(group: GroupNose, horizons: number): string | null {
  const heldOut = group.truth.length;
  if (group.plate.length !== heldOut) return "plate";
  if (group.fold.length !== heldOut) return "fold";
  if (group.horizons.length !== 0 && group.horizons.length !== horizons) return "horizons";
  for (const [i, own] of group.horizons.entries()) {
    if (own.logits.length !== heldOut) return `horizons.${i}.logits`;
    if (own.probabilities.length !== heldOut) return `horizons.${i}.probabilities`;
    if (own.calibration.kind !== "isotonic") continue;
    const { logits, probabilities } = own.calibration;
    if (logits.length === 0 || logits.length !== probabilities.length) return `horizons.${i}.calibration`;
  }
  return null;
}

function horizonFault(horizon: HorizonNose, features: number, groups: number): string | null {
  const { input, mix, neighbours, trees } = horizon;
  const rows = neighbours.plates.length;
  const inputAt = inputFault(input, features);
  if (inputAt !== null) return inputAt;
  if (mix.length < FIRST_KINDS || mix.length > MODEL_KINDS.length || mix.some((one) => one < 0)) return "mix";
  for (const kind of ["logistic", "discriminant"] as const) {
    const model = horizon[kind];
    if (model === null) continue;
    if (model.weights.length !== groups * features || model.intercepts.length !== groups) return kind;
  }
  if (
    neighbours.whitening.length !== neighbours.axes * features ||
    neighbours.references.length !== rows * neighbours.axes ||
    neighbours.truths.length !== rows * groups ||
    (neighbours.localScale?.length ?? rows) !== rows
  )
    return "neighbours";
  if (trees !== null && !forestFits(trees, features, groups)) return "trees";
  return kernelFits(horizon.kernel ?? null, features, groups) ? null : "kernel";
}

/** The second kernel looks at another view of the sniff, which may have another number of features. */
function secondFault({ secondKernel }: HorizonNose, features: number, groups: number): string | null {
  if (!secondKernel) return null;
  const { input, kernel } = secondKernel;
  const fault = inputFault(input, features) ?? (kernelFits(kernel, features, groups) ? null : "kernel");
  return fault === null ? null : `secondKernel.${fault}`;
}

function inputFault(input: InputMap, features: number): string | null {
  const lists = [input.humiditySlope, input.centre, input.scale];
  if (lists.some((list) => list.length !== features)) return "input";
  return input.scale.every((one) => one > 0) ? null : "input.scale";
}

function kernelFits(model: KernelModel | null, features: number, groups: number): boolean {
  if (model === null) return true;
  const bells = model.middles.length / features;
  return (
    Number.isInteger(bells) && model.weights.length === bells * groups && model.intercepts.length === groups
  );
}

/** Every walk down a tree must end: children lie further on, leaves inside their list. */
function forestFits(forest: Forest, features: number, groups: number): boolean {
  const nodes = forest.feature.length;
  if (forest.threshold.length !== nodes || forest.right.length !== nodes) return false;
  if (forest.trees < 1 || forest.roots.length !== forest.trees) return false;
  if (!forest.roots.every((root) => root >= 0 && root < nodes)) return false;
  for (let node = 0; node < nodes; node += 1) {
    const feature = forest.feature[node]!;
    const right = forest.right[node]!;
    const fits =
      feature < 0
        ? right >= 0 && (right + 1) * groups <= forest.leaves.length
        : feature < features && node + 1 < nodes && right > node && right < nodes;
    if (!fits) return false;
  }
  return true;
}
