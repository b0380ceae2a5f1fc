import { recipeOf } from "../features/recipe.js";
import { type RandomSource, seededRandom } from "../kernel/random.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { NetEnsemble } from "../nose/models.js";
import type { Nose } from "../nose/nose.js";
import type { Sniff } from "../sniff/sniff.js";
import { assembleNose, type FittedNose, type Work } from "./assembleNose.js";
import { chooseRecipe, type RecipeChoice } from "./chooseRecipe.js";
import { dealFolds } from "./dealFolds.js";
import { fitHorizon, type FittedHorizon } from "./fitHorizon.js";
import { emptyHeldOut, type HeldOutLogits, judgeNets, judgePlain } from "./heldOutLogits.js";
import { horizonsOf, type HorizonSpan } from "./horizonsOf.js";
import { type Prepared, prepareSamples, type SampleError } from "./prepareSamples.js";
import { rawTables } from "./rawTables.js";
import { teachNets } from "./teachNets.js";
import type { Taught, TeachOptions } from "./teachOptions.js";

export type { Taught, TeachOptions } from "./teachOptions.js";

/** Why there is no nose. */
export type TeachError =
  | SampleError
  | { readonly kind: "cancelled" } // the user stopped it: nothing has changed
  | { readonly kind: "failed"; readonly detail: string }; // the device could not compute: try another browser

/** Folds of the inner split, and nets of an ensemble. Common practice. */
const FOLDS = 10;
const MEMBERS = 5;
const HIDDEN = 16;
const STEPS = 120;

/**
 * Teaches a nose: chooses the recipe, fits all models on each fold and on all samples, mixes and calibrates them on
 * held-out answers, and keeps those answers as evidence. TensorFlow.js must have a backend (see chooseBackend).
 */
export async function teachNose(
  samples: readonly Sniff[],
  options: TeachOptions,
): Promise<Result<Taught, TeachError>> {
  const prepared = prepareSamples(samples, options.groups);
  if (!prepared.ok) return prepared;
  try {
    return await teachPrepared(prepared.value, options);
  } catch (cause) {
    return err({ kind: "failed", detail: cause instanceof Error ? cause.message : String(cause) });
  }
}

async function teachPrepared(prepared: Prepared, options: TeachOptions): Promise<Result<Taught, TeachError>> {
  const random = seededRandom(options.seed);
  const spans = horizonsOf(prepared.sniffs);
  const units = options.split === "occasion" ? prepared.occasions : prepared.plates;
  const folds = Math.min(FOLDS, new Set(units).size);
  const groupCount = prepared.groups.length;
  const kindOfRow = (row: number) =>
    `${prepared.truth.subarray(row * groupCount, (row + 1) * groupCount).join()} ${prepared.dishes[row]}`;
  const foldOf = dealFolds(units, kindOfRow, Math.max(2, folds), random);
  const fewFolds = foldOf.map((fold) => fold % 5);
  const choice = choiceOf(prepared, spans, fewFolds, random, options);
  const tables = rawTables(prepared.sniffs, choice.recipe, spans);
  const weight = weightsOf(prepared, options);
  const work: Work = { prepared, options, spans, tables, foldOf, folds, choice, weight, random };
  const heldOut = spans.map(() => emptyHeldOut(prepared.sniffs.length, groupCount));
  const fitted = await fitAllFolds(work, heldOut);
  if (fitted === null) return err({ kind: "cancelled" });
  return ok(assembleNose(work, heldOut, fitted));
}

function choiceOf(
  prepared: Prepared,
  spans: readonly HorizonSpan[],
  folds: Int32Array,
  random: RandomSource,
  options: TeachOptions,
): RecipeChoice {
  const kept = options.start === undefined ? undefined : recipeOf(options.start.recipe);
  if (kept !== undefined && (kept.reference !== "cleanAir" || prepared.hasCleanAir))
    return { recipe: kept, penalty: 1, compared: [] };
  return chooseRecipe(prepared, spans.at(-1)!, folds, random);
}

function weightsOf(prepared: Prepared, options: TeachOptions): Float64Array {
  return prepared.weight.map((one, row) => one * (options.recency?.[prepared.sniffs[row]!.id] ?? 1));
}

/** Fits everything without each fold, lets it judge that fold, and fits once on all samples. */
async function fitAllFolds(work: Work, heldOut: readonly HeldOutLogits[]): Promise<FittedNose | null> {
  const { prepared, options, tables, foldOf, folds, weight, random } = work;
  const isCancelled = options.isCancelled ?? (() => false);
  const report = (done: number) => options.onProgress?.(Math.min(1, done));
  const settings = { penalty: work.choice.penalty, corrects: work.choice.recipe.reference === "cleanAir" };
  const jobs: { x: Float64Array[]; weight: Float64Array }[] = [];
  let whole: readonly FittedHorizon[] = [];
  const judged = folds >= 2 ? Array.from({ length: folds }, (_, fold) => fold) : [];
  for (const fold of [...judged, -1]) {
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (isCancelled()) return null;
    const taught = weight.map((one, row) => (foldOf[row] === fold ? 0 : one));
    const rows = [...foldOf.keys()].filter((row) => foldOf[row] === fold);
    const fitted = tables.map((raw) => fitHorizon(raw, prepared, taught, settings, random));
    fitted.forEach((one, place) => judgePlain(heldOut[place]!, one, rows));
    jobs.push({ x: fitted.map(({ table }) => table.x), weight: taught });
    whole = fitted;
    report((0.4 * jobs.length) / (judged.length + 1));
  }
  if (options.withoutNets === true) return { horizons: whole, nets: null };
  const { truth, plates } = prepared;
  const nets = await teachNets(
    jobs,
    {
      rows: prepared.sniffs.length,
      features: tables[0]!.features,
      groups: prepared.groups.length,
      truth,
      plates,
      members: MEMBERS,
      hidden: HIDDEN,
      steps: STEPS,
      start: matchingNets(options.start, prepared.groups, tables[0]!.features),
    },
    { random, isCancelled, onProgress: (done) => report(0.4 + 0.55 * done) },
  );
  if (nets === null) return null;
  for (const fold of judged) {
    const rows = [...foldOf.keys()].filter((row) => foldOf[row] === fold);
    heldOut.forEach((into, place) => judgeNets(into, nets[fold]!, jobs[fold]!.x[place]!, rows));
  }
  return { horizons: whole, nets: nets.at(-1)! };
}

/** The nets of an older nose, if they take the same features and answer for the same groups. */
function matchingNets(
  start: Nose | undefined,
  groups: readonly string[],
  features: number,
): NetEnsemble | undefined {
  const nets = start?.nets ?? undefined;
  if (nets === undefined || start === undefined) return undefined;
  const fits =
    nets.inWeights.length === nets.members * features * nets.hidden &&
    nets.members === MEMBERS &&
    start.groups.length === groups.length &&
    start.groups.every(({ name }, i) => name === groups[i]);
  return fits ? nets : undefined;
}
