import { softClipped } from "../nose/mixLogits.js";
import { sigmoid } from "../stats/logistic.js";
import { cholesky, choleskySolve } from "../stats/linearAlgebra.js";

/** Log-odds of several models for the same cases. */
export interface MixCases {
  /** Log-odds of each model, shape [models][cases]. */
  readonly logits: readonly Float64Array[];
  /** 1 or 0, shape [cases]. */
  readonly truth: Float64Array;
  /** Shape [cases]; 0 leaves a case out. */
  readonly weight: Float64Array;
  /** Which models may weigh anything, shape [models]. */
  readonly allowed: readonly boolean[];
}

/** Pull of the weights towards an equal share each, in cases: few plates should not pick favourites. */
const PULL = 10;
const ROUNDS = 30;

/**
 * Stacking: non-negative weights for the models' log-odds that minimise the log loss, pulled towards equal shares.
 *
 * @returns shape [models]
 * @see Wolpert, Neural Networks 5 (1992), 241-259; Breiman, Machine Learning 24 (1996), 49-64 (non-negative weights)
 */
export function fitMix(cases: MixCases): Float32Array {
  const models = cases.logits.length;
  const said = cases.logits.map((logits) => logits.map(softClipped));
  const share = 1 / Math.max(1, cases.allowed.filter((one) => one).length);
  const weights = Float64Array.from(cases.allowed, (one) => (one ? share : 0));
  for (let round = 0; round < ROUNDS; round += 1) {
    const { gradient, hessian } = slopeAndCurve(said, cases, weights, share);
    const free = [...weights.keys()].filter(
      (i) => cases.allowed[i] === true && (weights[i]! > 0 || gradient[i]! < 0),
    );
    if (free.length === 0) break;
    const size = free.length;
    const block = Float64Array.from(
      { length: size * size },
      (_, at) => hessian[free[Math.floor(at / size)]! * models + free[at % size]!]!,
    );
    const step = choleskySolve(
      cholesky(block, size),
      free.map((i) => gradient[i]!),
      size,
    );
    let moved = 0;
    free.forEach((i, at) => {
      const next = Math.max(0, weights[i]! - Math.max(-0.5, Math.min(0.5, step[at]!)));
      moved = Math.max(moved, Math.abs(next - weights[i]!));
      weights[i] = next;
    });
    if (moved < 1e-5) break;
  }
  return Float32Array.from(weights, (weight) => (weight < 0.005 ? 0 : weight));
}

/** Log-odds of the mixture, shape [cases]. */
export function mixedLogits(logits: readonly Float64Array[], weights: ArrayLike<number>): Float64Array {
  const mixed = new Float64Array(logits[0]?.length ?? 0);
  logits.forEach((model, i) => {
    if (weights[i] === 0) return;
    for (let at = 0; at < mixed.length; at += 1) mixed[at]! += weights[i]! * softClipped(model[at]!);
  });
  return mixed;
}

function slopeAndCurve(said: readonly Float64Array[], cases: MixCases, weights: Float64Array, share: number) {
  const models = said.length;
  const gradient = Float64Array.from(weights, (weight) => PULL * (weight - share));
  const hessian = new Float64Array(models * models);
  for (let i = 0; i < models; i += 1) hessian[i * models + i] = PULL;
  for (let at = 0; at < cases.truth.length; at += 1) {
    const weight = cases.weight[at]!;
    if (weight === 0) continue;
    let logit = 0;
    for (let i = 0; i < models; i += 1) logit += weights[i]! * said[i]![at]!;
    const p = sigmoid(logit);
    for (let i = 0; i < models; i += 1) {
      gradient[i]! += weight * (p - cases.truth[at]!) * said[i]![at]!;
      for (let j = 0; j < models; j += 1)
        hessian[i * models + j]! += weight * Math.max(1e-6, p * (1 - p)) * said[i]![at]! * said[j]![at]!;
    }
  }
  return { gradient, hessian };
}
