import type { RandomSource } from "../kernel/random.js";
import { type Recipe, recipeOf } from "../features/recipe.js";
import { softplus } from "../stats/logistic.js";
import { allOrNull, type DoJob } from "./crew.js";
import { putBack } from "./heldOutLogits.js";
import type { HorizonSpan } from "./horizonsOf.js";
import { nextSeed, type TrialJob } from "./plainJobs.js";
import { labelsOf, type Prepared } from "./prepareSamples.js";
import { type HorizonTable, rawTables } from "./rawTables.js";

/** What was compared, and what won. */
export interface RecipeChoice {
  readonly recipe: Recipe;
  readonly penalty: number;
  /** How much of the humidity's part is taken out of the features, 0 to 1. */
  readonly humidityShare: number;
  readonly compared: readonly { readonly id: number; readonly name: string; readonly logLoss: number }[];
}

/** Penalties compared for the logistic regression: from fifty times to a tenth of the usual default. */
const PENALTIES = [50, 10, 1, 0.1];
/** A recipe further down the list must be better by this share of the log loss. Common practice: no choice on noise. */
const CLEAR_GAIN = 0.03;
/** Shares of the humidity's part that may be taken out: where smell and humidity came together, half may be best. */
const HUMIDITY_SHARES = [0.5, 0, 1];
/** An unusual share must be better by this share of the log loss. Common practice, as above. */
const SHARE_GAIN = 0.01;
/**
 * Numbers of the recipes that are compared, the preferred ones first. Without clean air the mean and what departs from it
 * carries over to food that was never taught better than quarter by quarter, on the open data; with clean air it does not.
 * The recipes that are not named here are kept for older noses.
 */
const WITH_CLEAN_AIR = { preferred: 8, others: [9, 7] };
const WITHOUT_CLEAN_AIR = { preferred: 7, others: [6, 5] };
/** Trials of a choice, each on every fold. */
export const TRIALS = HUMIDITY_SHARES.length + WITH_CLEAN_AIR.others.length;

/**
 * Compares the recipes by held-out log loss of quick trees, a logistic regression and a kernel together, at the last
 * horizon. The penalty and how much of the humidity is taken out are chosen on the preferred recipe first, so that another
 * cannot win only because the weather was left in the preferred one.
 *
 * @param foldOf - fold of each row, shape [rows]
 * @returns null if it was cancelled
 */
export async function chooseRecipe(
  prepared: Prepared,
  span: HorizonSpan,
  foldOf: Int32Array,
  random: RandomSource,
  doJob: DoJob,
): Promise<RecipeChoice | null> {
  const trialsOf = (id: number) => {
    const recipe = numberedRecipe(id);
    const raw = rawTables(prepared.sniffs, recipe, [span])[0]!;
    return (share: number, penalties: readonly number[]) =>
      trial({ prepared, recipe, raw, foldOf, random, doJob }, share, penalties);
  };
  const { preferred, others } = prepared.hasCleanAir ? WITH_CLEAN_AIR : WITHOUT_CLEAN_AIR;
  const usual = usualShare(numberedRecipe(preferred));
  const shares = [usual, ...HUMIDITY_SHARES.filter((one) => one !== usual)];
  const onPreferred = trialsOf(preferred);
  const shared = allOrNull(await Promise.all(shares.map((share) => onPreferred(share, PENALTIES))));
  const first = shared?.[0];
  if (shared === null || first === undefined) return null;
  let best = first;
  for (const one of shared) if (one.logLoss < best.logLoss * (1 - SHARE_GAIN)) best = one;
  const { humidityShare: share, penalty } = best;
  const rest = allOrNull(await Promise.all(others.map((id) => trialsOf(id)(share, [penalty]))));
  if (rest === null) return null;
  const tried = [best, ...rest];
  for (const one of tried) if (one.logLoss < best.logLoss * (1 - CLEAR_GAIN)) best = one;
  return {
    recipe: best.recipe,
    penalty: best.penalty,
    humidityShare: share,
    compared: tried.map(({ recipe, logLoss }) => ({ id: recipe.id, name: recipe.name, logLoss })),
  };
}

function numberedRecipe(id: number): Recipe {
  const recipe = recipeOf(id);
  if (recipe === undefined) throw new RangeError(`there is no recipe ${id}`);
  return recipe;
}

/** Log ratios to clean air are usually corrected for humidity; levels drift with the sensor too, and half is less wrong. */
function usualShare({ reference }: Recipe): number {
  return reference === "cleanAir" ? 1 : 0.5;
}

/** Log-odds of one model for the held-out rows, shape [rows * groups]. */
type Said = Float64Array;

interface Trial {
  readonly recipe: Recipe;
  readonly humidityShare: number;
  readonly penalty: number;
  readonly logLoss: number;
}

interface TrialWork {
  readonly prepared: Prepared;
  readonly recipe: Recipe;
  readonly raw: HorizonTable;
  readonly foldOf: Int32Array;
  readonly random: RandomSource;
  readonly doJob: DoJob;
}

async function trial(
  work: TrialWork,
  humidityShare: number,
  penalties: readonly number[],
): Promise<Trial | null> {
  const { prepared, recipe, raw, foldOf, random, doJob } = work;
  const size = prepared.truth.length;
  const lines: Said[] = penalties.map(() => new Float64Array(size));
  const kernel: Said = new Float64Array(size);
  const grown: Said = new Float64Array(size);
  const jobs = [...new Set(foldOf)].map((fold): TrialJob => ({
    kind: "trial",
    raw,
    labels: labelsOf(prepared),
    weight: prepared.weight.map((one, row) => (foldOf[row] === fold ? 0 : one)),
    heldOut: [...foldOf.keys()].filter((row) => foldOf[row] === fold),
    seed: nextSeed(random),
    humidityShare,
    penalties,
  }));
  const answers = allOrNull(await Promise.all(jobs.map(doJob)));
  if (answers === null) return null;
  answers.forEach((answer, one) => {
    const fill = (into: Said, said: Said) => putBack(into, said, jobs[one]!.heldOut);
    lines.forEach((line, i) => fill(line, answer.lines[i]!));
    fill(kernel, answer.kernel);
    fill(grown, answer.trees);
  });
  const lossOf = (said: readonly Said[]) => meanLoss(prepared, raw.reached, said);
  const best = leastOf(lines.map((line) => lossOf([line])));
  const logLoss = lossOf([lines[best]!, kernel, grown]);
  return { recipe, humidityShare, penalty: penalties[best]!, logLoss };
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
