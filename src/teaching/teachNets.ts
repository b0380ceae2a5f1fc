/** The ensemble of small nets. With backend.ts the only code that touches TensorFlow.js. */
import * as tf from "@tensorflow/tfjs";
import { type RandomSource, standardNormal } from "../kernel/random.js";
import type { NetEnsemble } from "../nose/models.js";

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
 * Teaches `members` nets for each job, all in one graph: weights are stacked, one matrix product a layer.
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
  const data = tensorsOf(jobs, settings, control.random);
  const weights = startWeights(jobs.length * settings.members, settings, control.random);
  const optimizer = tf.train.adam(LEARNING_RATE);
  const watch = startWatch(weights);
  try {
    for (let step = 0; step < settings.steps; step += 1) {
      if (step % 2 === 0) await breathe();
      if (control.isCancelled()) return null;
      const x = data.x[step % data.x.length]!;
      optimizer.minimize(() => lossOf(forward(x, weights), data.truth, data.taught, weights), false, weights);
      control.onProgress((step + 1) / settings.steps);
      if (data.watched !== null && (step + 1) % LOOK_EVERY === 0) {
        await look(watch, data, weights);
        if (watch.idleLooks >= PATIENCE) break;
      }
    }
    const final = data.watched === null ? weights : watch.best;
    return await readWeights(final, jobs.length, settings);
  } finally {
    optimizer.dispose();
    tf.dispose([data.x, data.truth, data.taught, data.watched ?? [], weights, watch.best, watch.bestLoss]);
  }
}

interface NetTensors {
  readonly x: tf.Tensor3D[];
  readonly truth: tf.Tensor3D;
  readonly taught: tf.Tensor3D;
  readonly watched: tf.Tensor3D | null;
}

function tensorsOf(jobs: readonly NetJob[], settings: NetSettings, random: RandomSource): NetTensors {
  const { rows, features, groups, members, truth, plates } = settings;
  const nets = jobs.length * members;
  const x = (jobs[0]?.x ?? []).map((_, horizon) => {
    const tiled = new Float32Array(nets * rows * features);
    for (let net = 0; net < nets; net += 1)
      tiled.set(jobs[Math.floor(net / members)]!.x[horizon]!, net * rows * features);
    return tf.tensor3d(tiled, [nets, rows, features]);
  });
  const taught = new Float32Array(nets * rows * groups);
  const watched = new Float32Array(nets * rows * groups);
  let anyWatched = false;
  for (let net = 0; net < nets; net += 1) {
    const { weight } = jobs[Math.floor(net / members)]!;
    const watchedPlates = drawWatched(weight, plates, random);
    anyWatched ||= watchedPlates.size > 0;
    for (let row = 0; row < rows; row += 1)
      for (let group = 0; group < groups; group += 1) {
        const known = truth[row * groups + group]! >= 0 ? weight[row]! : 0;
        const part = watchedPlates.has(plates[row]!) ? watched : taught;
        part[(net * rows + row) * groups + group] = known;
      }
  }
  normalise(taught, nets);
  normalise(watched, nets);
  const shape: [number, number, number] = [nets, rows, groups];
  const oneTruth = Float32Array.from(truth, (one) => Math.max(0, one));
  return {
    x,
    truth: tf.tensor3d(oneTruth, [1, rows, groups]),
    taught: tf.tensor3d(taught, shape),
    watched: anyWatched ? tf.tensor3d(watched, shape) : null,
  };
}

function drawWatched(weight: Float64Array, plates: Int32Array, random: RandomSource): Set<number> {
  const own = new Set<number>();
  weight.forEach((one, row) => one > 0 && own.add(plates[row]!));
  if (own.size < WATCHED_PLATES) return new Set();
  return new Set([...own].filter(() => random() < WATCHED_SHARE));
}

/** Makes the masks of each net add up to 1, so that a loss is a mean. */
function normalise(masks: Float32Array, nets: number): void {
  const size = masks.length / nets;
  for (let net = 0; net < nets; net += 1) {
    const own = masks.subarray(net * size, (net + 1) * size);
    const sum = own.reduce((a, b) => a + b, 0);
    if (sum > 0) own.forEach((value, i) => (own[i] = value / sum));
  }
}

type Weights = tf.Variable[];

function startWeights(nets: number, settings: NetSettings, random: RandomSource): Weights {
  const { features, hidden, groups, start } = settings;
  const filled = (shape: number[], spread: number, from: Float32Array | undefined) => {
    const size = shape.reduce((a, b) => a * b, 1);
    const values =
      from === undefined
        ? Float32Array.from({ length: size }, () => spread * standardNormal(random))
        : Float32Array.from({ length: size }, (_, at) => from[at % from.length]!);
    return tf.tidy(() => tf.variable(tf.tensor(values, shape)));
  };
  // Glorot and Bengio, AISTATS (2010): spread by the square root of the fan-in.
  return [
    filled([nets, features, hidden], Math.sqrt(1 / features), start?.inWeights),
    filled([nets, 1, hidden], 0, start?.inBias),
    filled([nets, hidden, groups], Math.sqrt(1 / hidden), start?.outWeights),
    filled([nets, 1, groups], 0, start?.outBias),
  ];
}

function forward(
  x: tf.Tensor3D,
  [inWeights, inBias, outWeights, outBias]: readonly tf.Tensor[],
): tf.Tensor3D {
  const layer = tf.tanh(tf.add(tf.matMul(x, inWeights as tf.Tensor3D), inBias!)) as tf.Tensor3D;
  return tf.add(tf.matMul(layer, outWeights as tf.Tensor3D), outBias!) as tf.Tensor3D;
}

/** Log loss from log-odds, without overflow; shape as the log-odds. */
function crossEntropy(logits: tf.Tensor3D, truth: tf.Tensor3D): tf.Tensor {
  const tail = tf.log1p(tf.exp(tf.neg(tf.abs(logits))));
  return tf.add(tf.sub(tf.relu(logits), tf.mul(logits, truth)), tail);
}

function lossOf(
  logits: tf.Tensor3D,
  truth: tf.Tensor3D,
  mask: tf.Tensor3D,
  weights: readonly tf.Tensor[],
): tf.Scalar {
  const decay = tf.add(tf.sum(tf.square(weights[0]!)), tf.sum(tf.square(weights[2]!)));
  const fit = tf.sum(tf.mul(crossEntropy(logits, truth), mask));
  return tf.add(fit, tf.mul(decay, WEIGHT_DECAY / 2)) as tf.Scalar;
}

interface Watch {
  best: tf.Tensor[];
  bestLoss: tf.Tensor1D;
  idleLooks: number;
}

function startWatch(weights: Weights): Watch {
  const nets = weights[0]!.shape[0]!;
  return { best: weights.map((one) => tf.clone(one)), bestLoss: tf.fill([nets], 1e9), idleLooks: 0 };
}

/** Keeps, net by net, the weights with the least loss on the watched plates so far. */
async function look(watch: Watch, data: NetTensors, weights: Weights): Promise<void> {
  const { best, bestLoss, gained } = tf.tidy(() => {
    const x = data.x.at(-1)!;
    const loss = tf.sum(
      tf.mul(crossEntropy(forward(x, weights), data.truth), data.watched!),
      [1, 2],
    ) as tf.Tensor1D;
    const better = tf.less(loss, watch.bestLoss);
    const pick = tf.reshape(better, [-1, 1, 1]);
    return {
      best: weights.map((one, i) => tf.where(tf.broadcastTo(pick, one.shape), one, watch.best[i]!)),
      bestLoss: tf.minimum(loss, watch.bestLoss) as tf.Tensor1D,
      gained: tf.sum(tf.cast(better, "float32")),
    };
  });
  tf.dispose([watch.best, watch.bestLoss]);
  watch.best = best;
  watch.bestLoss = bestLoss;
  const count = (await gained.data())[0]!;
  gained.dispose();
  watch.idleLooks = count > 0 ? 0 : watch.idleLooks + 1;
}

async function readWeights(
  weights: readonly tf.Tensor[],
  jobs: number,
  settings: NetSettings,
): Promise<NetEnsemble[]> {
  const flat = (await Promise.all(weights.map((one) => one.data()))) as Float32Array[];
  const slice = (i: number, job: number) => {
    const size = flat[i]!.length / jobs;
    return flat[i]!.slice(job * size, (job + 1) * size);
  };
  return Array.from({ length: jobs }, (_, job) => ({
    members: settings.members,
    hidden: settings.hidden,
    inWeights: slice(0, job),
    inBias: slice(1, job),
    outWeights: slice(2, job),
    outBias: slice(3, job),
  }));
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
    const one = tf.tensor3d(Float32Array.from(x), [1, rows, features]);
    const weights = [
      tf.tensor3d(nets.inWeights, [nets.members, features, nets.hidden]),
      tf.tensor3d(nets.inBias, [nets.members, 1, nets.hidden]),
      tf.tensor3d(nets.outWeights, [nets.members, nets.hidden, groups]),
      tf.tensor3d(nets.outBias, [nets.members, 1, groups]),
    ];
    return tf.mean(forward(tf.tile(one, [nets.members, 1, 1]), weights), 0);
  });
  const values = (await logits.data()) as Float32Array;
  logits.dispose();
  return values;
}
