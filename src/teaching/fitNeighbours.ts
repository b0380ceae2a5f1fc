import type { NeighbourModel } from "../nose/models.js";
import { ledoitWolf } from "../stats/ledoitWolf.js";
import { cholesky, covariance, forwardSolve, identityMatrix, matMul } from "../stats/linearAlgebra.js";
import { LOCAL_PLATES, whitened } from "../nose/neighbourLogits.js";
import { symmetricEigen } from "./symmetricEigen.js";
import { countingRows, rowOf, type Table } from "./table.js";

/** What the distance to the nearest taught plates is set against. */
export type StrangenessScale =
  | "local" // how far those plates lie from their own nearest: suits dishes of unequal spread
  | "plain"; // nothing: suits few plates a dish, where a lone plate would make all around it look near

/** Weight of the plain covariance against that within kinds: kinds are few and small. */
const TOTAL_SHARE = 0.05;
/** Axes kept at most, for the size of the nose. */
const MOST_AXES = 12;

/**
 * A space in which plates of one kind (the same dish) lie in a round cloud, and the taught sniffs' places in it.
 *
 * @param kinds - number of each row's kind, shape [rows]
 * @param plates - number of each row's plate, shape [rows]
 * @param scale - whether strangeness is set against how dense the taught plates lie ("local") or not ("plain")
 * @see Goldberger and others, NIPS 17 (2004) (metric learned from kinds); Ledoit and Wolf (2004) for the shrinkage
 */
export function fitNeighbours(
  table: Table,
  kinds: Int32Array,
  plates: Int32Array,
  scale: StrangenessScale = "local",
): NeighbourModel {
  const { features } = table;
  const rows = countingRows(table);
  const whitening = mainAxes(table, rows, whiteningOf(table, rows, kinds));
  const axes = whitening.length / features;
  const references = new Float32Array(rows.length * axes);
  const truths = new Int16Array(rows.length * table.groups);
  rows.forEach((row, at) => {
    references.set(whitened({ axes, whitening }, rowOf(table, row)), at * axes);
    for (let group = 0; group < table.groups; group += 1)
      truths[at * table.groups + group] = table.truth[row * table.groups + group]!;
  });
  const model: NeighbourModel = {
    axes,
    whitening,
    references,
    truths,
    plates: Int16Array.from(rows, (row) => plates[row]!),
  };
  if (scale === "plain") return model;
  return { ...model, localScale: localScales(model) };
}

/** Of each reference, the mean distance to the nearest plates but its own, shape [references]. */
function localScales({ axes, references, plates }: NeighbourModel): Float32Array {
  const nearest = Array.from(plates, (): NearPlate[] => []);
  // Most pairs end at this limit, without a look at the list.
  const limits = new Float64Array(plates.length).fill(Infinity);
  for (let one = 0; one < plates.length; one += 1)
    for (let other = 0; other < one; other += 1) {
      if (plates[one] === plates[other]) continue;
      let square = 0;
      for (let axis = 0; axis < axes; axis += 1)
        square += (references[one * axes + axis]! - references[other * axes + axis]!) ** 2;
      if (square < limits[one]!) limits[one] = putIn(nearest[one]!, plates[other]!, square);
      if (square < limits[other]!) limits[other] = putIn(nearest[other]!, plates[one]!, square);
    }
  return Float32Array.from(nearest, (near) => {
    const sum = near.reduce((all, { square }) => all + Math.sqrt(square), 0);
    return sum / Math.max(1, near.length);
  });
}

/** A plate and the squared distance to its nearest sniff. */
interface NearPlate {
  readonly plate: number;
  square: number;
}

/** Puts a plate where it belongs among the few that are nearest, nearest first. @returns what the next must be below */
function putIn(near: NearPlate[], plate: number, square: number): number {
  const known = near.find((one) => one.plate === plate);
  if (known === undefined) near.push({ plate, square });
  else known.square = Math.min(known.square, square);
  near.sort((one, other) => one.square - other.square);
  near.length = Math.min(near.length, LOCAL_PLATES);
  return near[LOCAL_PLATES - 1]?.square ?? Infinity;
}

/** Keeps the directions in which the whitened sniffs differ most: what is left is as round as noise. */
function mainAxes(table: Table, rows: readonly number[], whitening: Float32Array): Float32Array {
  const { features } = table;
  const axes = Math.min(features, MOST_AXES);
  if (axes === features || rows.length < 2) return whitening;
  const places = new Float64Array(rows.length * features);
  rows.forEach((row, at) =>
    places.set(whitened({ axes: features, whitening }, rowOf(table, row)), at * features),
  );
  const { vectors } = symmetricEigen(covariance(places, rows.length, features), features);
  return Float32Array.from(matMul(vectors.subarray(0, axes * features), whitening, axes, features, features));
}

function whiteningOf(table: Table, rows: readonly number[], kinds: Int32Array): Float32Array {
  const { features } = table;
  const within = withinKinds(table, rows, kinds);
  if (within === null) return Float32Array.from(identityMatrix(features));
  const spread = ledoitWolf(within.centred, within.count, features).covariance;
  let trace = 0;
  for (let i = 0; i < features; i += 1) trace += spread[i * features + i]!;
  if (!(trace > 0)) return Float32Array.from(identityMatrix(features));
  // The features are standardised, so the plain spread of each is about 1.
  for (let i = 0; i < features; i += 1) spread[i * features + i]! += TOTAL_SHARE * (trace / features);
  const factor = cholesky(spread, features);
  const inverse = new Float32Array(features * features);
  for (let column = 0; column < features; column += 1) {
    const unit = new Float64Array(features);
    unit[column] = 1;
    forwardSolve(factor, unit, features).forEach((value, row) => (inverse[row * features + column] = value));
  }
  return inverse;
}

/** Rows less the mean of their kind, for kinds with two rows or more; null if there are too few. */
function withinKinds(table: Table, rows: readonly number[], kinds: Int32Array) {
  const members = new Map<number, number[]>();
  for (const row of rows) members.set(kinds[row]!, [...(members.get(kinds[row]!) ?? []), row]);
  const repeated = [...members.values()].filter((list) => list.length > 1);
  const count = repeated.reduce((sum, list) => sum + list.length, 0);
  if (count < 6) return null;
  const centred = new Float64Array(count * table.features);
  let at = 0;
  for (const list of repeated) {
    const mean = new Float64Array(table.features);
    for (const row of list) rowOf(table, row).forEach((value, i) => (mean[i]! += value / list.length));
    // Centring on a mean of n rows takes out a share 1/n of the spread: put it back.
    const restore = Math.sqrt(list.length / (list.length - 1));
    for (const row of list) {
      rowOf(table, row).forEach(
        (value, i) => (centred[at * table.features + i] = restore * (value - mean[i]!)),
      );
      at += 1;
    }
  }
  return { centred, count };
}
