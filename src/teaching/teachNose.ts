import { otherView, type Recipe, recipeOf } from "../features/recipe.js";
import { type RandomSource, seededRandom } from "../kernel/random.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { NetEnsemble } from "../nose/models.js";
import type { Nose } from "../nose/nose.js";
import { humidityShareOf } from "../nose/standardised.js";
import type { Sniff } from "../sniff/sniff.js";
import { alignOld } from "./alignOld.js";
import { assembleNose, judgedCases, type Work } from "./assembleNose.js";
import { allOrNull, createLoneCrew, type DoJob } from "./crew.js";
import { chooseRecipe, type RecipeChoice, TRIALS } from "./chooseRecipe.js";
import { dealFolds } from "./dealFolds.js";
import { chooseMix, type MixChoice } from "./chooseMix.js";
import { EARLY_BELLS, KERNEL } from "./fitKernel.js";
import type { StrangenessScale } from "./fitNeighbours.js";
import { type FittedHorizon, type PlainSettings, standardisedTable } from "./fitHorizon.js";
import { emptyHeldOut, fillIn, type HeldOutLogits, judgeNets } from "./heldOutLogits.js";
import { horizonsOf, type HorizonSpan } from "./horizonsOf.js";
import { type FitJob, nextSeed, type ScaleAnswer, type ScaleJob } from "./plainJobs.js";
import { kindOfRow, labelsOf, type Prepared, prepareSamples, type SampleError } from "./prepareSamples.js";
import { rawTables } from "./rawTables.js";
import { readyAnswers } from "./readyAnswers.js";
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
/** Folds of the choice of a recipe, which takes the more time. */
const FEW_FOLDS = 5;
const MEMBERS = 5;
const HIDDEN = 16;
const STEPS = 80;
/** Trees of the last horizon: more of them gain a little yet, but the teaching would take too long. */
const TREES = 120;
/** Trees of an earlier horizon, by which most plates are *uncertain* yet: fewer keep the teaching short. */
const EARLY_TREES = 40;
/** Share of the whole that each stage takes, roughly: what is left is calibration. */
const STAGES = { recipe: 0.2, plain: 0.45, nets: 0.25 };

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
  const foldOf = dealFolds(units, (row) => kindOfRow(prepared, row), Math.max(2, folds), random);
  const fewFolds = foldOf.map((fold) => fold % FEW_FOLDS);
  const crew = options.crew ?? createLoneCrew();
  const isCancelled = options.isCancelled ?? (() => false);
  let done = 0;
  const advance = (by: number) => options.onProgress?.((done += by));
  /** The crew's work in one stage, which is some share of the whole. */
  const stage =
    (share: number, jobs: number): DoJob =>
    async (job) => {
      const answer = await crew.do(job, isCancelled);
      advance(share / jobs);
      return answer;
    };
  let isChosen = false;
  // Before the backends are measured this thread's own work would be measured with them. Their fault is told below.
  Promise.resolve(options.backend)
    .then(() => crew.help(() => !isChosen))
    .catch(() => undefined);
  const doTrial = stage(STAGES.recipe, TRIALS * FEW_FOLDS);
  const choice = await choiceOf(prepared, spans, fewFolds, random, options, doTrial);
  isChosen = true;
  if (choice === null) return err({ kind: "cancelled" });
  const isFresh = prepared.sniffs.map(({ id }) => options.recency?.[id] !== undefined);
  const tablesOf = (recipe: Recipe) => {
    const raw = rawTables(prepared.sniffs, recipe, spans);
    return options.start === undefined ? raw : alignOld(raw, prepared, isFresh);
  };
  const [tables, others] = [tablesOf(choice.recipe), tablesOf(otherView(choice.recipe))];
  const weight = weightsOf(prepared, options);
  const work: Work = {
    prepared,
    options,
    spans,
    tables,
    others,
    foldOf,
    folds,
    choice,
    weight,
    random,
  };
  const heldOut = spans.map(() => emptyHeldOut(prepared.sniffs.length, groupCount));
  // A job of its own, so that the nets need not wait for it.
  const choosing = crew.do(scaleJob(work), isCancelled);
  const [horizons, nets, backend] = await Promise.all([
    fitPlain(work, choosing, heldOut, stage(STAGES.plain, (folds + 1) * spans.length)),
    fitNets(work, heldOut, (share) => advance(STAGES.nets * share)).then(async (taught) => {
      // Until then there is nothing to help with.
      await choosing;
      await crew.help(() => true);
      return taught;
    }),
    options.backend,
  ]);
  if (horizons === null || nets === "cancelled") return err({ kind: "cancelled" });
  const cases = judgedCases(work);
  const ready = heldOut.map((one) => readyAnswers(one, prepared, foldOf, cases.rows));
  const mix: MixChoice =
    cases.groups.length > 0
      ? chooseMix(ready.at(-1)!.models, cases, nets !== null)
      : { chosen: "trees", kinds: ["trees"], rivals: [] };
  return ok(assembleNose(work, ready, { horizons, nets, backend: backend ?? "unknown" }, mix));
}

async function choiceOf(
  prepared: Prepared,
  spans: readonly HorizonSpan[],
  folds: Int32Array,
  random: RandomSource,
  options: TeachOptions,
  doJob: DoJob,
): Promise<RecipeChoice | null> {
  const { start } = options;
  const kept = start && recipeOf(start.recipe);
  if (start !== undefined && kept !== undefined && (kept.reference !== "cleanAir" || prepared.hasCleanAir))
    return {
      recipe: kept,
      penalty: 1,
      humidityShare: humidityShareOf(start),
      compared: [],
    };
  return chooseRecipe(prepared, spans.at(-1)!, folds, random, doJob);
}

function weightsOf(prepared: Prepared, options: TeachOptions): Float64Array {
  return prepared.weight.map((one, row) => one * (options.recency?.[prepared.sniffs[row]!.id] ?? 1));
}

/** Each fold's number, and -1 for all samples. */
function foldsOf(work: Work): number[] {
  return [...heldOutFolds(work), -1];
}

function heldOutFolds({ folds }: Work): number[] {
  return folds >= 2 ? Array.from({ length: folds }, (_, fold) => fold) : [];
}

function taughtWeight(work: Work, fold: number): Float64Array {
  return work.weight.map((one, row) => (work.foldOf[row] === fold ? 0 : one));
}

function rowsOf(work: Work, fold: number): number[] {
  return [...work.foldOf.keys()].filter((row) => work.foldOf[row] === fold);
}

function plainSettings({ choice, spans }: Work, scale: StrangenessScale, place: number): PlainSettings {
  const { penalty, humidityShare } = choice;
  const size =
    place === spans.length - 1
      ? { trees: TREES, bells: KERNEL.bells }
      : { trees: EARLY_TREES, bells: EARLY_BELLS };
  return { penalty, humidityShare, scale, ...size };
}

function scaleJob({ prepared, tables, choice, options }: Work): ScaleJob {
  return {
    kind: "scale",
    raw: tables.at(-1)!,
    labels: labelsOf(prepared),
    weight: prepared.weight,
    humidityShare: choice.humidityShare,
    seed: options.seed,
  };
}

/** Fits the plain models without each fold, lets them judge that fold, and returns those of all samples. */
async function fitPlain(
  work: Work,
  choosing: Promise<ScaleAnswer | null>,
  heldOut: readonly HeldOutLogits[],
  doJob: DoJob,
): Promise<readonly FittedHorizon[] | null> {
  const { prepared, tables, others, random } = work;
  const labels = labelsOf(prepared);
  // Drawn before anything is waited for, as the nets draw from the same source.
  const parts = foldsOf(work).flatMap((fold) =>
    tables.map((_, place) => ({ fold, place, seed: nextSeed(random) })),
  );
  const chosen = await choosing;
  if (chosen === null) return null;
  const jobs = parts.map(({ fold, place, seed }): FitJob => ({
    kind: "fit",
    raw: tables[place]!,
    other: others[place]!,
    labels,
    weight: taughtWeight(work, fold),
    heldOut: rowsOf(work, fold),
    seed,
    settings: plainSettings(work, chosen.scale, place),
    keep: fold < 0,
  }));
  const answers = allOrNull(await Promise.all(jobs.map((job) => doJob(job))));
  if (answers === null) return null;
  answers.forEach(({ judged }, at) => fillIn(heldOut[parts[at]!.place]!, judged, jobs[at]!.heldOut));
  return answers.flatMap(({ fitted }) => fitted ?? []);
}

/** Teaches the nets of all folds at once and lets each judge its fold; null if nets were not wanted. */
async function fitNets(
  work: Work,
  heldOut: readonly HeldOutLogits[],
  advance: (share: number) => void,
): Promise<NetEnsemble | null | "cancelled"> {
  const { prepared, options, tables, random } = work;
  if (options.withoutNets === true) return null;
  await options.backend;
  const jobs = foldsOf(work).map((fold) => {
    const weight = taughtWeight(work, fold);
    return {
      weight,
      x: tables.map((raw) => standardisedTable(raw, prepared, weight, work.choice.humidityShare).table.x),
    };
  });
  const features = tables[0]!.features;
  let told = 0;
  const nets = await teachNets(
    jobs,
    {
      rows: prepared.sniffs.length,
      features,
      groups: prepared.groups.length,
      truth: prepared.truth,
      plates: prepared.plates,
      members: MEMBERS,
      hidden: HIDDEN,
      steps: STEPS,
      start: matchingNets(options.start, prepared.groups, features),
    },
    {
      random,
      isCancelled: options.isCancelled ?? (() => false),
      onProgress: (done) => {
        advance(done - told);
        told = done;
      },
    },
  );
  if (nets === null) return "cancelled";
  for (const fold of heldOutFolds(work))
    heldOut.forEach((into, place) => judgeNets(into, nets[fold]!, jobs[fold]!.x[place]!, rowsOf(work, fold)));
  return nets.at(-1)!;
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
