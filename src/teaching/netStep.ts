/** What one step of teaching computes for the nets of one job: their answers, their loss and its slope. */
import * as tf from "@tensorflow/tfjs";
import type { JobNets } from "./netStack.js";

/** A job's rows at one horizon, shape [rows, features]; the other way round too, for the slope. */
export interface JobRows {
  readonly x: tf.Tensor2D;
  readonly turned: tf.Tensor2D;
}

/** Log-odds, shape [rows, members * groups]. */
export function forward(x: tf.Tensor2D, nets: JobNets): tf.Tensor2D {
  return answersOf(hiddenOf(x, nets), nets);
}

/**
 * Slope of the masked log loss by each weight, worked out by hand: TensorFlow.js would take its own way back through
 * every product, and on its WASM backend that way is many times slower than the products here, none of which is turned
 * or stacked. The test holds it against TensorFlow.js's own.
 *
 * @param truth - 1 or 0, repeated for each member, shape [rows, members * groups]
 * @param mask - weight of each answer in the loss, same shape
 */
export function lossSlope(
  { x, turned }: JobRows,
  nets: JobNets,
  truth: tf.Tensor2D,
  mask: tf.Tensor2D,
): JobNets {
  const hidden = hiddenOf(x, nets);
  // The slope of the log loss by the log-odds is the probability less the truth.
  const wrong = tf.mul(tf.sub(tf.sigmoid(answersOf(hidden, nets)), truth), mask) as tf.Tensor2D;
  const steepness = tf.sub(1, tf.square(hidden));
  const back = tf.mul(tf.matMul(wrong, tf.transpose(nets[2])), steepness) as tf.Tensor2D;
  return [
    tf.matMul(turned, back),
    tf.sum(back, 0, true) as tf.Tensor2D,
    tf.matMul(tf.transpose(hidden), wrong),
    tf.sum(wrong, 0, true) as tf.Tensor2D,
  ];
}

/** Log loss from log-odds, without overflow; shape as the log-odds. */
export function crossEntropy(logits: tf.Tensor, truth: tf.Tensor): tf.Tensor {
  const tail = tf.log1p(tf.exp(tf.neg(tf.abs(logits))));
  return tf.add(tf.sub(tf.relu(logits), tf.mul(logits, truth)), tail);
}

function hiddenOf(x: tf.Tensor2D, [inWeights, inBias]: JobNets): tf.Tensor2D {
  return tanh(tf.add(tf.matMul(x, inWeights), inBias)) as tf.Tensor2D;
}

function answersOf(hidden: tf.Tensor2D, [, , outWeights, outBias]: JobNets): tf.Tensor2D {
  return tf.add(tf.matMul(hidden, outWeights), outBias);
}

/** By way of the logistic function, which the WASM backend does several numbers at a time, as it does not do tanh. */
function tanh(x: tf.Tensor): tf.Tensor {
  return tf.sub(tf.mul(tf.sigmoid(tf.mul(x, 2)), 2), 1);
}
