/** Two plain classifiers for tests: how hard are the demo samples, and does clean air give anything away? */
import { solveSpd } from "../../src/stats/linearAlgebra.js";
import { sigmoid } from "../../src/stats/logistic.js";
import { rocAuc } from "../../src/stats/rocAuc.js";
import { mean, standardDeviation } from "../../src/stats/summary.js";
import type { SimulatedSniff } from "../../src/virtual/simulateSniff.js";

export interface Row {
  readonly fold: string;
  readonly features: readonly number[];
  readonly label: number;
}

type Score = (train: readonly Row[], features: readonly number[]) => number;

const CHANNELS = 8;
const logMean = (sweeps: readonly (readonly number[])[], channel: number) =>
  mean(sweeps.map((sweep) => Math.log(sweep[channel]!)));

/** Log ratio of headspace to clean air, each channel, early and late: 16 features. */
export function headspaceFeatures({ cleanAir, headspace }: SimulatedSniff): number[] {
  return Array.from({ length: CHANNELS }, (_, channel) => {
    const clean = logMean(cleanAir.ohm.slice(-8), channel);
    const late = logMean(headspace.ohm.slice(-12), channel) - clean;
    return [late, logMean(headspace.ohm.slice(3, 7), channel) - clean];
  }).flat();
}

/** Level and slope of the log resistance in clean air, each channel: 16 features. */
export function cleanAirFeatures({ cleanAir }: SimulatedSniff): number[] {
  return Array.from({ length: CHANNELS }, (_, channel) => {
    const first = logMean(cleanAir.ohm.slice(0, 7), channel);
    const last = logMean(cleanAir.ohm.slice(-7), channel);
    return [last, last - first];
  }).flat();
}

interface Scored {
  readonly score: number;
  readonly label: number;
}

/** AUC with every fold scored by a model that never saw it; features scaled on the taught part alone. */
export function crossedAuc(rows: readonly Row[], scoreOf: Score): number {
  const folds = [...new Set(rows.map((row) => row.fold))];
  return aucOf(
    folds.flatMap((fold) =>
      scoreWith(
        rows.filter((row) => row.fold !== fold),
        rows.filter((row) => row.fold === fold),
        scoreOf,
      ),
    ),
  );
}

/** AUC on rows from elsewhere of a model taught on all of these. */
export const trainedAuc = (train: readonly Row[], elsewhere: readonly Row[], scoreOf: Score): number =>
  aucOf(scoreWith(train, elsewhere, scoreOf));

function scoreWith(train: readonly Row[], held: readonly Row[], scoreOf: Score): Scored[] {
  const scale = scaler(train);
  const scaled = train.map((row) => ({ ...row, features: scale(row.features) }));
  return held.map((row) => ({ score: scoreOf(scaled, scale(row.features)), label: row.label }));
}

function aucOf(scored: readonly Scored[]): number {
  const auc = rocAuc(
    scored.map(({ score }) => score),
    scored.map(({ label }) => label),
  );
  return auc ?? Number.NaN;
}

/** Share of present among the nearest, by Euclidean distance. */
export const nearest =
  (count: number): Score =>
  (train, features) => {
    const distance = (row: Row) => row.features.reduce((sum, x, i) => sum + (x - features[i]!) ** 2, 0);
    const sorted = train.map((row) => [distance(row), row.label] as const).sort((a, b) => a[0] - b[0]);
    return mean(sorted.slice(0, count).map(([, label]) => label));
  };

const weightsOf = new WeakMap<readonly Row[], Float64Array>();

/** Logistic regression with a ridge, by Newton's method (iteratively reweighted least squares). */
export const logistic: Score = (train, features) => {
  const weights = weightsOf.get(train) ?? fitLogistic(train, 0.03);
  weightsOf.set(train, weights);
  return withOne(features).reduce((sum, x, i) => sum + x * weights[i]!, 0);
};

function fitLogistic(rows: readonly Row[], ridge: number): Float64Array {
  const size = rows[0]!.features.length + 1;
  let weights = new Float64Array(size);
  for (let round = 0; round < 12; round += 1) {
    const hessian = new Float64Array(size * size);
    const gradient = new Float64Array(size);
    for (let i = 0; i < size; i += 1) {
      hessian[i * size + i] = i === size - 1 ? 1e-6 : ridge;
      gradient[i] = i === size - 1 ? 0 : -ridge * weights[i]!;
    }
    for (const row of rows) {
      const x = withOne(row.features);
      const p = sigmoid(x.reduce((sum, value, i) => sum + value * weights[i]!, 0));
      x.forEach((value, i) => {
        gradient[i]! += (row.label - p) * value;
        x.forEach((other, j) => (hessian[i * size + j]! += p * (1 - p) * value * other));
      });
    }
    const move = solveSpd(hessian, gradient, size);
    weights = weights.map((weight, i) => weight + move[i]!);
  }
  return weights;
}

const withOne = (features: readonly number[]) => [...features, 1];

function scaler(rows: readonly Row[]): (features: readonly number[]) => number[] {
  const scales = rows[0]!.features.map((_, i) => {
    const column = rows.map((row) => row.features[i]!);
    return [mean(column), standardDeviation(column)] as const;
  });
  return (features) => features.map((x, i) => (x - scales[i]![0]) / scales[i]![1]);
}
