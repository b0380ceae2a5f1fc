import { forestLogits } from "../nose/forestLogits.js";
import { kernelLogits } from "../nose/kernelLogits.js";
import { linearLogits } from "../nose/linearLogits.js";
import { MODEL_KINDS, type ModelKind, type NetEnsemble } from "../nose/models.js";
import { nearestPlates, whitened } from "../nose/neighbourLogits.js";
import { netLogits } from "../nose/netLogits.js";
import type { FittedHorizon } from "./fitHorizon.js";
import { rowOf, type Table } from "./table.js";

/** Log-odds of every model for every sniff, by models that never saw its plate; one horizon. */
export interface HeldOutLogits {
  /** In the order of MODEL_KINDS, each of shape [rows, groups]. */
  readonly models: readonly Float64Array[];
  /** Strangeness among the taught plates, shape [rows]. */
  readonly strangeness: Float64Array;
}

export function emptyHeldOut(rows: number, groups: number): HeldOutLogits {
  return {
    models: MODEL_KINDS.map(() => new Float64Array(rows * groups)),
    strangeness: new Float64Array(rows),
  };
}

/** Plain models' answers for some rows, in the rows' order. */
export interface JudgedRows {
  /** Each of shape [some rows, groups]. */
  readonly models: Readonly<Record<Exclude<ModelKind, "nets">, Float64Array>>;
  readonly strangeness: Float64Array;
}

type RowJudge = (x: Float64Array, at: number) => Float64Array;

/** What a model says of some rows, in their order, shape [some rows, groups]. */
export function saidOf(table: Table, rows: readonly number[], judge: RowJudge): Float64Array {
  const logits = new Float64Array(rows.length * table.groups);
  rows.forEach((row, at) => logits.set(judge(rowOf(table, row), at), at * table.groups));
  return logits;
}

/** Puts what was said of some rows at those rows' places among all, shape [all rows, groups]. */
export function putBack(into: Float64Array, said: Float64Array, rows: readonly number[]): void {
  const groups = said.length / rows.length;
  rows.forEach((row, at) => into.set(said.subarray(at * groups, (at + 1) * groups), row * groups));
}

/** Lets the plain models judge some rows. */
export function judgePlain(fitted: FittedHorizon, rows: readonly number[]): JudgedRows {
  const { table, neighbours, logistic, discriminant, trees, kernel, secondKernel, otherTable } = fitted;
  const { groups } = table;
  const nearest = rows.map((row) =>
    nearestPlates(neighbours, whitened(neighbours, rowOf(table, row)), groups),
  );
  const said = (judge: RowJudge) => saidOf(table, rows, judge);
  return {
    models: {
      logistic: said((x) => linearLogits(logistic, x)),
      discriminant: said((x) => linearLogits(discriminant, x)),
      trees: said((x) => forestLogits(trees, x, groups)),
      kernel: said((x) => kernelLogits(kernel, x)),
      secondKernel: saidOf(otherTable, rows, (x) => kernelLogits(secondKernel.kernel, x)),
      neighbours: said((_, at) => nearest[at]!.logits),
    },
    strangeness: Float64Array.from(nearest, ({ strangeness }) => strangeness),
  };
}

/** Fills in plain models' answers for their rows. */
export function fillIn(into: HeldOutLogits, judged: JudgedRows, rows: readonly number[]): void {
  rows.forEach((row, at) => (into.strangeness[row] = judged.strangeness[at]!));
  MODEL_KINDS.forEach((kind, place) => {
    if (kind !== "nets") putBack(into.models[place]!, judged.models[kind], rows);
  });
}

/** Fills in the nets' answers for the rows of one fold. */
export function judgeNets(
  into: HeldOutLogits,
  nets: NetEnsemble,
  x: Float64Array,
  rows: readonly number[],
): void {
  const features = nets.inWeights.length / (nets.members * nets.hidden);
  for (const row of rows)
    put(into, "nets", row, netLogits(nets, x.subarray(row * features, (row + 1) * features)));
}

function put(into: HeldOutLogits, kind: ModelKind, row: number, logits: Float64Array): void {
  into.models[MODEL_KINDS.indexOf(kind)]!.set(logits, row * logits.length);
}
