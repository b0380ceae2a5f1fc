/** What the plain models are fitted by: jobs that carry all they need, so that any thread can do them in any order. */
import { type RandomSource, seededRandom } from "../kernel/random.js";
import { forestLogits } from "../nose/forestLogits.js";
import { kernelLogits } from "../nose/kernelLogits.js";
import { linearLogits } from "../nose/linearLogits.js";
import { softClipped } from "../nose/mixLogits.js";
import { chooseScale } from "./chooseScale.js";
import {
  fitHorizon,
  type FittedHorizon,
  type PlainSettings,
  standardisedTable,
  triesFor,
} from "./fitHorizon.js";
import { fitKernel, KERNEL } from "./fitKernel.js";
import { fitLogisticPath } from "./fitLogistic.js";
import type { StrangenessScale } from "./fitNeighbours.js";
import { growForest } from "./growForest.js";
import { type JudgedRows, judgePlain, saidOf } from "./heldOutLogits.js";
import type { Labels } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";

interface JobData {
  readonly raw: HorizonTable;
  readonly labels: Labels;
  /** How much each row counts; 0 for those held out, shape [rows]. */
  readonly weight: Float64Array;
  /** Each job has its own chance, so that the order of the jobs does not matter. */
  readonly seed: number;
}

interface HeldOutJob extends JobData {
  /** Rows that are judged by models that never saw them. */
  readonly heldOut: readonly number[];
}

/** Fits the models of one horizon without some rows, and lets them judge those. */
export interface FitJob extends HeldOutJob {
  readonly kind: "fit";
  /** The other view of the same sniffs. */
  readonly other: HorizonTable;
  readonly settings: PlainSettings;
  /** Whether the models themselves are wanted: they are large. */
  readonly keep: boolean;
}

export interface FitAnswer {
  readonly judged: JudgedRows;
  readonly fitted: FittedHorizon | null;
}

/** Fits quick models of several settings without some rows, to compare recipes. */
export interface TrialJob extends HeldOutJob {
  readonly kind: "trial";
  readonly humidityShare: number;
  readonly penalties: readonly number[];
}

/** Log-odds for the rows held out, in their order, each of shape [held out, groups]. */
export interface TrialAnswer {
  /** One a penalty. */
  readonly lines: readonly Float64Array[];
  readonly kernel: Float64Array;
  readonly trees: Float64Array;
}

/** Picks what strangeness is set against. */
export interface ScaleJob extends JobData {
  readonly kind: "scale";
  readonly humidityShare: number;
}

export interface ScaleAnswer {
  readonly scale: StrangenessScale;
}

/** What each kind of job is answered with. */
interface Answers {
  readonly fit: FitAnswer;
  readonly trial: TrialAnswer;
  readonly scale: ScaleAnswer;
}

export type PlainJob = FitJob | TrialJob | ScaleJob;
export type PlainAnswer = Answers[PlainJob["kind"]];
export type AnswerTo<Job extends PlainJob> = Answers[Job["kind"]];

/** The seed of one job, drawn from that of the whole teaching. */
export function nextSeed(random: RandomSource): number {
  return Math.floor(random() * 2 ** 32);
}

const TRIAL_TREES = 15;
const TRIAL_BELLS = 120;

/** Does a job, here and now. */
export function doPlainJob(job: PlainJob): PlainAnswer {
  switch (job.kind) {
    case "fit":
      return fit(job);
    case "trial":
      return tryOut(job);
    case "scale":
      return pickScale(job);
  }
}

function fit({ raw, other, labels, weight, settings, seed, heldOut, keep }: FitJob): FitAnswer {
  const fitted = fitHorizon(raw, other, labels, weight, settings, seededRandom(seed));
  return { judged: judgePlain(fitted, heldOut), fitted: keep ? fitted : null };
}

function pickScale({ raw, labels, weight, humidityShare, seed }: ScaleJob): ScaleAnswer {
  return { scale: chooseScale(raw, { ...labels, weight }, humidityShare, seed) };
}

function tryOut(job: TrialJob): TrialAnswer {
  const { heldOut, labels } = job;
  const random = seededRandom(job.seed);
  const { table } = standardisedTable(job.raw, labels, job.weight, job.humidityShare);
  const said = (judge: (x: Float64Array) => Float64Array) =>
    saidOf(table, heldOut, (x) => judge(x).map(softClipped));
  const options = { trees: TRIAL_TREES, tries: triesFor(table.features), leafRows: 1 };
  const trees = growForest(table, options, random);
  const kernel = fitKernel(table, { ...KERNEL, bells: TRIAL_BELLS }, random);
  return {
    lines: fitLogisticPath(table, job.penalties).map((line) => said((x) => linearLogits(line, x))),
    kernel: said((x) => kernelLogits(kernel, x)),
    trees: said((x) => forestLogits(trees, x, table.groups)),
  };
}
