/** The weights of all nets as four tensors, and the way to plain numbers and back. */
import * as tf from "@tensorflow/tfjs";
import { type RandomSource, standardNormal } from "../kernel/random.js";
import type { NetEnsemble } from "../nose/models.js";

export interface NetShape {
  readonly jobs: number;
  readonly members: number;
  readonly features: number;
  readonly hidden: number;
  readonly groups: number;
}

/**
 * The members of a job lie side by side, so that one matrix product a layer serves them all: weights into the hidden
 * layer and its bias, weights out of it and their bias. Shapes [jobs, features, members, hidden],
 * [jobs, 1, members, hidden], [jobs, members * hidden, members, groups] and [jobs, 1, members, groups]; in the third
 * all is zero between one member's hidden units and another's answers.
 */
export type NetStack<T extends tf.Tensor = tf.Tensor> = [T, T, T, T];

/** One job's part of a stack, its members' columns side by side: each a matrix. */
export type JobNets = NetStack<tf.Tensor2D>;

/** The same done with each of the four. */
export function eachOf<T extends tf.Tensor, U extends tf.Tensor>(
  [a, b, c, d]: NetStack<T>,
  change: (one: T, place: 0 | 1 | 2 | 3) => U,
): NetStack<U> {
  return [change(a, 0), change(b, 1), change(c, 2), change(d, 3)];
}

/** Weights by chance, or those of an older ensemble for every job. */
export function startStack(
  shape: NetShape,
  random: RandomSource,
  start: NetEnsemble | undefined,
): NetStack<tf.Variable> {
  const { features, hidden, groups } = shape;
  const drawn = (size: number, spread: number, from: Float32Array | undefined) =>
    Float32Array.from({ length: shape.jobs * shape.members * size }, (_, at) =>
      from === undefined ? spread * standardNormal(random) : from[at % from.length]!,
    );
  // Glorot and Bengio, AISTATS (2010): spread by the square root of the fan-in.
  const inWeights = drawn(features * hidden, Math.sqrt(1 / features), start?.inWeights);
  const inBias = drawn(hidden, 0, start?.inBias);
  const outWeights = drawn(hidden * groups, Math.sqrt(1 / hidden), start?.outWeights);
  const outBias = drawn(groups, 0, start?.outBias);
  const { jobs, members } = shape;
  const beside = (values: Float32Array, rows: number, columns: number) =>
    tf.transpose(tf.tensor4d(values, [jobs, members, rows, columns]), [0, 2, 1, 3]);
  const ownOut = () => {
    const own = tf.tensor4d(outWeights, [jobs, members * hidden, 1, groups]);
    return tf.mul(tf.tile(own, [1, 1, members, 1]), ownAnswers(shape));
  };
  const variable = (make: () => tf.Tensor) => tf.tidy(() => tf.variable(make()));
  return [
    variable(() => beside(inWeights, features, hidden)),
    variable(() => beside(inBias, 1, hidden)),
    variable(ownOut),
    variable(() => beside(outBias, 1, groups)),
  ];
}

/** 1 between a member's hidden units and its own answers, else 0; shape [1, members * hidden, members, 1]. */
export function ownAnswers({ members, hidden }: Pick<NetShape, "members" | "hidden">): tf.Tensor4D {
  const own = Float32Array.from({ length: members * hidden * members }, (_, at) =>
    Math.floor(at / members / hidden) === at % members ? 1 : 0,
  );
  return tf.tensor4d(own, [1, members * hidden, members, 1]);
}

/** One job's nets out of a stack. */
export function jobNets(stack: NetStack, job: number): JobNets {
  const part = (tensor: tf.Tensor) => {
    const [, rows, members, columns] = tensor.shape as [number, number, number, number];
    const own = tf.slice(tensor, [job, 0, 0, 0], [1, rows, members, columns]);
    return tf.reshape(own, [rows, members * columns]) as tf.Tensor2D;
  };
  return eachOf(stack, part);
}

/** Plain numbers of a stack, one ensemble a job. */
export async function readStack(stack: NetStack, shape: NetShape): Promise<NetEnsemble[]> {
  const { jobs, members, features, hidden, groups } = shape;
  const [inWeights, inBias, outWeights, outBias] = (await Promise.all(stack.map((one) => one.data()))) as [
    Float32Array,
    Float32Array,
    Float32Array,
    Float32Array,
  ];
  const apart = (values: Float32Array, job: number, rows: number, columns: number) =>
    Float32Array.from({ length: members * rows * columns }, (_, at) => {
      const member = Math.floor(at / rows / columns);
      const row = Math.floor(at / columns) % rows;
      return values[((job * rows + row) * members + member) * columns + (at % columns)]!;
    });
  /** A member's own hidden units are the rows of its own answers. */
  const ownOut = (job: number) =>
    Float32Array.from({ length: members * hidden * groups }, (_, at) => {
      const unit = Math.floor(at / groups);
      const member = Math.floor(unit / hidden);
      return outWeights[((job * members * hidden + unit) * members + member) * groups + (at % groups)]!;
    });
  return Array.from({ length: jobs }, (_, job) => ({
    members,
    hidden,
    inWeights: apart(inWeights, job, features, hidden),
    inBias: apart(inBias, job, 1, hidden),
    outWeights: ownOut(job),
    outBias: apart(outBias, job, 1, groups),
  }));
}
