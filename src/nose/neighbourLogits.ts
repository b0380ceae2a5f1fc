import type { NeighbourModel } from "./models.js";

/** How many of the nearest taught plates vote, and how many votes the overall share counts for. Common practice. */
export const NEIGHBOURS = 5;
const PRIOR_VOTES = 0.5;

/** Plates that a distance is averaged over. Breunig and others (2000) advise a few, so that one plate is no crowd. */
export const LOCAL_PLATES = 3;
/** Keeps identical sniffs from being infinitely strange beside each other. */
const LEAST_SCALE = 1e-6;

/** The nearest taught plates. */
export interface Nearest {
  /** Log-odds of each group, shape [groups]. */
  readonly logits: Float64Array;
  /** Distance to the nearest taught plates, in units of how far those lie from their own: for "unlike anything taught". */
  readonly strangeness: number;
}

/** Where a standardised feature vector lies in the neighbours' space; `x` has shape [features]. */
export function whitened(model: Pick<NeighbourModel, "axes" | "whitening">, x: Float64Array): Float64Array {
  const features = x.length;
  const { axes, whitening } = model;
  const place = new Float64Array(axes);
  for (let axis = 0, at = 0; axis < axes; axis += 1) {
    let sum = 0;
    for (let i = 0; i < features; i += 1, at += 1) sum += whitening[at]! * x[i]!;
    place[axis] = sum;
  }
  return place;
}

/**
 * Votes of the nearest taught plates, nearer ones counting more, and how strange the place is among them.
 *
 * @see Breunig, Kriegel, Ng and Sander, Proc. ACM SIGMOD (2000), 93-104: local outlier factor (on plain distances here)
 */
export function nearestPlates(model: NeighbourModel, place: Float64Array, groups: number): Nearest {
  const near = nearestFirst(model, place);
  const unit = near[Math.min(near.length, NEIGHBOURS) - 1]?.distance ?? 1;
  const logits = Float64Array.from({ length: groups }, (_, group) => {
    const overall = shareOf(model, groups, group);
    let present = PRIOR_VOTES * overall;
    let absent = PRIOR_VOTES * (1 - overall);
    let voters = 0;
    for (const { row, distance } of near) {
      const truth = model.truths[row * groups + group]!;
      if (truth < 0) continue;
      const vote = 1 / (0.1 + distance / Math.max(unit, 1e-9));
      if (truth > 0.5) present += vote;
      else absent += vote;
      voters += 1;
      if (voters >= NEIGHBOURS) break;
    }
    return Math.log((present + 0.01) / (absent + 0.01));
  });
  return { logits, strangeness: strangenessOf(model, near) };
}

/** Distance to the nearest of some plates, nearest first, in units of how far those lie from their own. */
export function strangenessOf(
  model: Pick<NeighbourModel, "localScale">,
  near: readonly { row: number; distance: number }[],
): number {
  let distance = 0;
  let scale = 0;
  for (const one of near.slice(0, LOCAL_PLATES)) {
    distance += one.distance;
    scale += model.localScale?.[one.row] ?? 1;
  }
  return near.length === 0 ? Infinity : distance / Math.max(LEAST_SCALE, scale);
}

/** The nearest sniff of each plate (its place in the references) and its distance, nearest plate first. */
export function nearestFirst(
  model: NeighbourModel,
  place: Float64Array,
): { readonly row: number; readonly distance: number }[] {
  const { rows, square } = nearestOfPlates(model, place);
  const near: { row: number; distance: number }[] = [];
  rows.forEach((row, plate) => {
    if (row >= 0) near.push({ row, distance: Math.sqrt(square[plate]!) });
  });
  return near.sort((a, b) => a.distance - b.distance || a.row - b.row);
}

/** For each plate number its nearest sniff (-1 if it has none) and that one's squared distance (Infinity). */
function nearestOfPlates(model: NeighbourModel, place: Float64Array) {
  const { axes, plates, references } = model;
  let count = 0;
  for (let row = 0; row < plates.length; row += 1) count = Math.max(count, plates[row]! + 1);
  const rows = new Int32Array(count).fill(-1);
  const square = new Float64Array(count).fill(Infinity);
  for (let row = 0; row < plates.length; row += 1) {
    const plate = plates[row]!;
    let sum = 0;
    for (let axis = 0, at = row * axes; axis < axes; axis += 1, at += 1)
      sum += (references[at]! - place[axis]!) ** 2;
    if (sum < square[plate]!) {
      square[plate] = sum;
      rows[plate] = row;
    }
  }
  return { rows, square };
}

function shareOf(model: NeighbourModel, groups: number, group: number): number {
  let present = 0.5;
  let known = 1;
  for (let row = 0; row < model.plates.length; row += 1) {
    const truth = model.truths[row * groups + group]!;
    if (truth < 0) continue;
    known += 1;
    present += truth;
  }
  return present / known;
}
