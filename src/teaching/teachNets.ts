/** The ensemble of small nets. With backend.ts the only code that touches TensorFlow.js. */
import * as tf from "@tensorflow/tfjs";
import type { RandomSource } from "../kernel/random.js";
import type { NetEnsemble } from "../nose/models.js";
import {
  eachOf,
  jobNets,
  type NetShape,
  type NetStack,
  ownAnswers,
  readStack,
  startStack,
} from "./netStack.js";
import { crossEntropy, forward, type JobRows, lossSlope } from "./netStep.js";

/** One fold's view of the data: the same rows, its own standardisation and its own teaching part. */
export interface NetJob {
  /** Standardised features, one table a horizon, shape [horizons][rows * features]. */
  readonly x: readonly Float64Array[];
  /** How much each row counts in teaching, 0 if held out, shape [rows]. */
  readonly weight: Float64Array;
}

export interface NetSettings {
  readonly rows: number;
  readonly features: number;
  readonly groups: number;
  /** 1, 0 or -1, shape [rows, groups]. */
  readonly truth: Int8Array;
  /** Number of each row's plate, shape [rows]: a plate is wholly watched or wholly taught. */
  readonly plates: Int32Array;
  readonly members: number;
  readonly hidden: number;
  readonly steps: number;
  /** Weights to start from instead of chance, for a refresh. */
  readonly start?: NetEnsemble | undefined;
}

export interface TeachControl {
  readonly random: RandomSource;
  readonly isCancelled: () => boolean;
  /** Share of the nets' teaching that is done, fraction. */
  readonly onProgress: (done: number) => void;
}

/** Adam's step length, and its pull of the weights to zero; the features are standardised. Common practice. */
const LEARNING_RATE = 0.03;
const WEIGHT_DECAY = 0.004;
/** Every fifth plate is watched, not taught, to stop a net in time; with fewer plates than this none is. */
const WATCHED_SHARE = 0.2;
const WATCHED_PLATES = 20;
/** Steps between two looks at the watched plates, and looks without gain after which all nets stop. */
const LOOK_EVERY = 10;
const PATIENCE = 4;

/**
 * Teaches `members` nets for each job, all in one graph and in step: the members of a job by one matrix product a layer,
 * the weights of all jobs by one update.
 *
 * Steps go round the horizons, so that one net answers for each stretch of the headspace. Early stopping is net by
 * net, on plates drawn for it from its own teaching part.
 *
 * @returns one ensemble a job, or null if cancelled
 * @see Kingma and Ba, ICLR (2015), Adam; Prechelt, Neural Networks 11 (1998), 761-767, early stopping;
 *   Lakshminarayanan and others, NIPS 30 (2017), ensembles
 */
export async function teachNets(
  jobs: readonly NetJob[],
  settings: NetSettings,
  control: TeachControl,
): Promise<NetEnsemble[] | null> {
  const shape = { ...settings, jobs: jobs.length };
  const data = tensorsOf(jobs, settings, control.random);
  const weights = startStack(shape, control.random, settings.start);
  const optimizer = tf.train.adam(LEARNING_RATE);
  const watch = startWatch(weights, shape);
  try {
    for (let step = 0; step < settings.steps; step += 1) {
      if (step % 2 === 0) await breathe();
      if (control.isCancelled()) return null;
      tf.tidy(() => optimizer.applyGradients(slopeOf(data, weights, step)));
      control.onProgress((step + 1) / settings.steps);
      if (data.watched !== null && (step + 1) % LOOK_EVERY === 0) {
        await look(watch, data, data.watched, weights);
        if (watch.idleLooks >= PATIENCE) break;
      }
    }
    return await readStack(data.watched === null ? weights : watch.best, shape);
  } finally {
    optimizer.dispose();
    dispose(data, weights, watch);
  }
}

interface NetTensors {
  /** Shape [jobs][horizons]. */
  readonly rows: readonly (readonly JobRows[])[];
  readonly truth: tf.Tensor2D;
  /** Masks of the loss, one a job, each of shape [rows, members * groups]. */
  readonly taught: readonly tf.Tensor2D[];
  readonly watched: readonly tf.Tensor2D[] | null;
  readonly own: tf.Tensor4D;
}

function tensorsOf(jobs: readonly NetJob[], settings: NetSettings, random: RandomSource): NetTensors {
  const { rows, features, groups, members, truth } = settings;
  const masks = jobs.map((job) => masksOf(job, settings, random));
  const anyWatched = masks.some(({ watched }) => watched.some((one) => one > 0));
  const asTensor = (mask: Float32Array) => tf.tensor2d(mask, [rows, members * groups]);
  return {
    rows: jobs.map((job) =>
      job.x.map((values) => {
        const x = tf.tensor2d(Float32Array.from(values), [rows, features]);
        return { x, turned: tf.transpose(x) };
      }),
    ),
    truth: tf.tidy(() => {
      const one = tf.tensor2d(
        Float32Array.from(truth, (known) => Math.max(0, known)),
        [rows, groups],
      );
      return tf.tile(one, [1, members]);
    }),
    taught: masks.map(({ taught }) => asTensor(taught)),
    watched: anyWatched ? masks.map(({ watched }) => asTensor(watched)) : null,
    own: ownAnswers(settings),
  };
}

/** Which answers of each member are taught and which are watched; those of a member add up to 1, or to 0. */
function masksOf({ weight }: NetJob, settings: NetSettings, random: RandomSource) {
  const { rows, groups, members, truth, plates } = settings;
  const taught = new Float32Array(rows * members * groups);
  const watched = new Float32Array(rows * members * groups);
  for (let member = 0; member < members; member += 1) {
    const watchedPlates = drawWatched(weight, plates, random);
    const sums = { taught: 0, watched: 0 };
    const each = (visit: (at: number, known: number, part: "taught" | "watched") => void) => {
      for (let row = 0; row < rows; row += 1)
        for (let group = 0; group < groups; group += 1) {
          const known = truth[row * groups + group]! >= 0 ? weight[row]! : 0;
          const at = (row * members + member) * groups + group;
          visit(at, known, watchedPlates.has(plates[row]!) ? "watched" : "taught");
        }
    };
    each((_at, known, part) => (sums[part] += known));
    each((at, known, part) => {
      if (sums[part] > 0) (part === "taught" ? taught : watched)[at] = known / sums[part];
    });
  }
  return { taught, watched };
}

function drawWatched(weight: Float64Array, plates: Int32Array, random: RandomSource): Set<number> {
  const own = new Set<number>();
  weight.forEach((one, row) => one > 0 && own.add(plates[row]!));
  if (own.size < WATCHED_PLATES) return new Set();
  return new Set([...own].filter(() => random() < WATCHED_SHARE));
}

/** Slope of every net's loss, the pull to zero with it, by the names of the weights. */
function slopeOf(data: NetTensors, weights: NetStack<tf.Variable>, step: number): NamedSlope[] {
  const slopes = data.rows.map((horizons, job) =>
    tf.tidy(() =>
      lossSlope(horizons[step % horizons.length]!, jobNets(weights, job), data.truth, data.taught[job]!),
    ),
  );
  const all = eachOf(weights, (one, place) =>
    tf.reshape(tf.stack(slopes.map((slope) => slope[place]!)), one.shape),
  );
  const pull = eachOf(weights, (one) => tf.mul(one, WEIGHT_DECAY));
  const slope: NetStack = [
    tf.add(all[0], pull[0]),
    all[1],
    // Between one member's hidden units and another's answers there is nothing to teach.
    tf.add(tf.mul(all[2], data.own), pull[2]),
    all[3],
  ];
  return weights.map(({ name }, place) => ({ name, tensor: slope[place]! }));
}

interface NamedSlope {
  readonly name: string;
  readonly tensor: tf.Tensor;
}

interface Watch {
  best: NetStack;
  /** Shape [jobs, 1, members, 1]. */
  bestLoss: tf.Tensor;
  idleLooks: number;
}

function startWatch(weights: NetStack, { jobs, members }: NetShape): Watch {
  return {
    best: eachOf(weights, (one) => tf.clone(one)),
    bestLoss: tf.fill([jobs, 1, members, 1], 1e9),
    idleLooks: 0,
  };
}

/** Keeps, net by net, the weights with the least loss on the watched plates so far. */
async function look(
  watch: Watch,
  data: NetTensors,
  watched: readonly tf.Tensor2D[],
  weights: NetStack,
): Promise<void> {
  const { best, bestLoss, gained } = tf.tidy(() => {
    const losses = data.rows.map((horizons, job) => {
      const loss = crossEntropy(forward(horizons.at(-1)!.x, jobNets(weights, job)), data.truth);
      const perAnswer = tf.sum(tf.mul(loss, watched[job]!), 0);
      return tf.sum(tf.reshape(perAnswer, [weights[3].shape[2]!, -1]), 1);
    });
    const loss = tf.reshape(tf.stack(losses), watch.bestLoss.shape);
    const better = tf.less(loss, watch.bestLoss);
    return {
      best: eachOf(weights, (one, place) =>
        tf.where(tf.broadcastTo(better, one.shape), one, watch.best[place]),
      ),
      bestLoss: tf.minimum(loss, watch.bestLoss),
      gained: tf.sum(tf.cast(better, "float32")),
    };
  });
  tf.dispose([[...watch.best], watch.bestLoss]);
  watch.best = best;
  watch.bestLoss = bestLoss;
  const count = (await gained.data())[0]!;
  gained.dispose();
  watch.idleLooks = count > 0 ? 0 : watch.idleLooks + 1;
}

function dispose(data: NetTensors, weights: NetStack<tf.Variable>, watch: Watch): void {
  const rows = data.rows.flat().flatMap(({ x, turned }) => [x, turned]);
  const masks = [...data.taught, ...(data.watched ?? [])];
  tf.dispose([...rows, ...masks, data.truth, data.own, ...weights, ...watch.best, watch.bestLoss]);
}

/** Lets messages in, so that a cancel is heard within two steps. */
function breathe(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** Log-odds by TensorFlow.js, for the check of the plain forward pass; shape [rows, groups], mean over members. */
export async function netLogitsByTensorFlow(
  nets: NetEnsemble,
  x: Float64Array,
  rows: number,
): Promise<Float32Array> {
  const features = x.length / rows;
  const groups = nets.outBias.length / nets.members;
  const logits = tf.tidy(() => {
    const one = tf.tile(tf.tensor3d(Float32Array.from(x), [1, rows, features]), [nets.members, 1, 1]);
    const inWeights = tf.tensor3d(nets.inWeights, [nets.members, features, nets.hidden]);
    const inBias = tf.tensor3d(nets.inBias, [nets.members, 1, nets.hidden]);
    const outWeights = tf.tensor3d(nets.outWeights, [nets.members, nets.hidden, groups]);
    const outBias = tf.tensor3d(nets.outBias, [nets.members, 1, groups]);
    const hidden = tf.tanh(tf.add(tf.matMul(one, inWeights), inBias));
    return tf.mean(tf.add(tf.matMul(hidden, outWeights), outBias), 0);
  });
  const values = (await logits.data()) as Float32Array;
  logits.dispose();
  return values;
}
