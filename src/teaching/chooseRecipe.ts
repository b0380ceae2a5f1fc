import { type RandomSource } from "../kernel/random.js";
import { type Recipe, recipeOf } from "../features/recipe.js";
import { forestLogits } from "../nose/forestLogits.js";
import { kernelLogits } from "../nose/kernelLogits.js";
import { linearLogits } from "../nose/linearLogits.js";
import { softClipped } from "../nose/mixLogits.js";
import { softplus } from "../stats/logistic.js";
import { standardisedTable, triesFor } from "./fitHorizon.js";
import { fitKernelPath, type KernelShape } from "./fitKernel.js";
import { fitLogisticPath } from "./fitLogistic.js";
import { growForest } from "./growForest.js";
import type { HorizonSpan } from "./horizonsOf.js";
import type { Prepared } from "./prepareSamples.js";
import { type HorizonTable, rawTables } from "./rawTables.js";
import { rowOf } from "./table.js";

/** What was compared, and what won. */
export interface RecipeChoice {
  readonly recipe: Recipe;
  readonly penalty: number;
  readonly shape: KernelShape;
  /** How much of the humidity's part is taken out of the features, 0 to 1. */
  readonly humidityShare: number;
  readonly compared: readonly { readonly id: number; readonly name: string; readonly logLoss: number }[];
}

/** Penalties compared for the logistic regression: from fifty times to a tenth of the usual default. */
const PENALTIES = [50, 10, 1, 0.1];
/** Shapes of the kernel that are compared, the smoothest first: food never taught wants smooth, known food sharp. */
const SHAPES: readonly KernelShape[] = [
  { width: 0.1, ridge: 3 },
  { width: 0.1, ridge: 0.3 },
  { width: 0.3, ridge: 0.1 },
  { width: 1, ridge: 0.1 },
  { width: 2, ridge: 0.1 },
];
const TRIAL_TREES = 15;
const TRIAL_BELLS = 120;
/** A recipe further down the list must be better by this share of the log loss. Common practice: no choice on noise. */
const CLEAR_GAIN = 0.04;
/** Shares of the humidity's part that may be taken out: where smell and humidity came together, half may be best. */
const HUMIDITY_SHARES = [0.5, 0, 1];
/** An unusual share must be better by this share of the log loss. Common practice, as above. */
const SHARE_GAIN = 0.02;
/** Numbers of the recipes that are compared, the preferred ones first. The others are kept for older noses. */
const WITH_CLEAN_AIR = { preferred: 8, others: [9, 2, 7] };
const WITHOUT_CLEAN_AIR = { preferred: 6, others: [7, 4, 5] };

/**
 * Compares the recipes by held-out log loss of quick trees, a logistic regression and a kernel together, at the last
 * horizon; the penalty and the kernel's shape are picked on the way. How much of the humidity is taken out is chosen on
 * the preferred recipe first, so that another cannot win only because the weather was left in the preferred one.
 *
 * @param foldOf - fold of each row, shape [rows]
 */
export function chooseRecipe(
  prepared: Prepared,
  span: HorizonSpan,
  foldOf: Int32Array,
  random: RandomSource,
): RecipeChoice {
  const trialsOf = (id: number) => {
    const recipe = numberedRecipe(id);
    const raw = rawTables(prepared.sniffs, recipe, [span])[0]!;
    return (share: number) => trial(prepared, recipe, raw, share, foldOf, random);
  };
  const { preferred, others } = prepared.hasCleanAir ? WITH_CLEAN_AIR : WITHOUT_CLEAN_AIR;
  const usual = usualShare(numberedRecipe(preferred));
  const tryPreferred = trialsOf(preferred);
  let best = tryPreferred(usual);
  for (const share of HUMIDITY_SHARES.filter((one) => one !== usual)) {
    const other = tryPreferred(share);
    if (other.logLoss < best.logLoss * (1 - SHARE_GAIN)) best = other;
  }
  const share = best.humidityShare;
  const tried = [best, ...others.map((id) => trialsOf(id)(share))];
  for (const one of tried) if (one.logLoss < best.logLoss * (1 - CLEAR_GAIN)) best = one;
  return {
    recipe: best.recipe,
    penalty: best.penalty,
    shape: best.shape,
    humidityShare: share,
    compared: tried.map(({ recipe, logLoss }) => ({ id: recipe.id, name: recipe.name, logLoss })),
  };
}

function numberedRecipe(id: number): Recipe {
  const recipe = recipeOf(id);
  if (recipe === undefined) throw new RangeError(`there is no recipe ${id}`);
  return recipe;
}

/** Log ratios to clean air are usually corrected for humidity; levels drift with the sensor too, and usually are not. */
function usualShare({ reference }: Recipe): number {
  return reference === "cleanAir" ? 1 : 0;
}

/** Log-odds of one model for the held-out rows, shape [rows * groups]. */
type Said = Float64Array;

interface Trial {
  readonly recipe: Recipe;
  readonly humidityShare: number;
  readonly penalty: number;
  readonly shape: KernelShape;
  readonly logLoss: number;
}

function trial(
  prepared: Prepared,
  recipe: Recipe,
  raw: HorizonTable,
  humidityShare: number,
  foldOf: Int32Array,
  random: RandomSource,
): Trial {
  const size = prepared.truth.length;
  const lines: Said[] = PENALTIES.map(() => new Float64Array(size));
  const kernels: Said[] = SHAPES.map(() => new Float64Array(size));
  const grown: Said = new Float64Array(size);
  for (const fold of new Set(foldOf)) {
    const weight = prepared.weight.map((one, row) => (foldOf[row] === fold ? 0 : one));
    const { table } = standardisedTable(raw, prepared, weight, humidityShare);
    const fill = (into: Said, judge: (x: Float64Array) => Float64Array) => {
      for (let row = 0; row < raw.rows; row += 1)
        if (foldOf[row] === fold)
          into.set(judge(rowOf(table, row)).map(softClipped), row * prepared.groups.length);
    };
    fitLogisticPath(table, PENALTIES).forEach((line, i) => fill(lines[i]!, (x) => linearLogits(line, x)));
    fitKernelPath(table, SHAPES, TRIAL_BELLS, random).forEach((kernel, i) =>
      fill(kernels[i]!, (x) => kernelLogits(kernel, x)),
    );
    const options = { trees: TRIAL_TREES, tries: triesFor(table.features), leafRows: 1 };
    const trees = growForest(table, options, random);
    fill(grown, (x) => forestLogits(trees, x, table.groups));
  }
  const lossOf = (said: readonly Said[]) => meanLoss(prepared, raw.reached, said);
  const penalty = leastOf(lines.map((line) => lossOf([line])));
  const shape = leastOf(kernels.map((kernel) => lossOf([kernel])));
  const logLoss = lossOf([lines[penalty]!, kernels[shape]!, grown]);
  return { recipe, humidityShare, penalty: PENALTIES[penalty]!, shape: SHAPES[shape]!, logLoss };
}

/** Log loss of the mean of some models' log-odds, each plate counted once. */
function meanLoss(prepared: Prepared, reached: Uint8Array, said: readonly Said[]): number {
  const groups = prepared.groups.length;
  let [loss, cases] = [0, 0];
  prepared.truth.forEach((truth, at) => {
    const row = Math.floor(at / groups);
    if (truth < 0 || reached[row] === 0) return;
    const logit = said.reduce((sum, one) => sum + one[at]!, 0) / said.length;
    loss += prepared.weight[row]! * (softplus(logit) - truth * logit);
    cases += prepared.weight[row]!;
  });
  return loss / Math.max(cases, 1e-9);
}

function leastOf(losses: readonly number[]): number {
  return losses.indexOf(Math.min(...losses));
}
