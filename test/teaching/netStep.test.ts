// The slope that is worked out by hand against the one that TensorFlow.js (an outside library) differentiates itself.
import * as tf from "@tensorflow/tfjs";
import { beforeAll, expect, it } from "vitest";
import { seededRandom } from "../../src/kernel/random.js";
import { jobNets, readStack, startStack } from "../../src/teaching/netStack.js";
import { crossEntropy, forward, lossSlope } from "../../src/teaching/netStep.js";
import { useWasm } from "./useBackend.js";

const SHAPE = { jobs: 2, members: 3, features: 5, hidden: 4, groups: 2 };
const ROWS = 30;
const ANSWERS = SHAPE.members * SHAPE.groups;

beforeAll(useWasm);

it("is TensorFlow.js's own slope of the masked log loss, to 1e-5", () => {
  const x = tf.randomNormal<tf.Rank.R2>([ROWS, SHAPE.features], 0, 1, "float32", 1);
  const truth = tf.randomUniform<tf.Rank.R2>([ROWS, ANSWERS], 0, 1, "float32", 2).greater(0.5).toFloat();
  const mask = tf.randomUniform<tf.Rank.R2>([ROWS, ANSWERS], 0, 1, "float32", 3);
  const nets = jobNets(startStack(SHAPE, seededRandom(4), undefined), 1);
  const slope = lossSlope({ x, turned: tf.transpose(x) }, nets, truth as tf.Tensor2D, mask);
  const own = tf.grads((a, b, c, d) =>
    tf.sum(tf.mul(crossEntropy(forward(x, [a, b, c, d] as typeof nets), truth), mask)),
  )([...nets]);
  own.forEach((theirs, place) => {
    const ours = slope[place]!.dataSync();
    expect(theirs.shape).toEqual(slope[place]!.shape);
    theirs.dataSync().forEach((value, i) => expect(Math.abs(value - ours[i]!)).toBeLessThan(1e-5));
  });
});

it("gives back the weights that it was started from, for each job", async () => {
  const { members, features, hidden, groups } = SHAPE;
  const counted = (size: number) => Float32Array.from({ length: members * size }, (_, i) => i + 1);
  const start = {
    members,
    hidden,
    inWeights: counted(features * hidden),
    inBias: counted(hidden),
    outWeights: counted(hidden * groups),
    outBias: counted(groups),
  };
  expect(await readStack(startStack(SHAPE, seededRandom(1), start), SHAPE)).toEqual([start, start]);
});
