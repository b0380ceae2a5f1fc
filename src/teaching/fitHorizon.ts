import type { RandomSource } from "../kernel/random.js";
import type { Forest, KernelModel, LinearModel, NeighbourModel } from "../nose/models.js";
import type { InputMap, SecondKernel } from "../nose/nose.js";
import { standardised } from "../nose/standardised.js";
import { fitDiscriminant } from "./fitDiscriminant.js";
import { fitInput } from "./fitInput.js";
import { fitKernel, KERNEL } from "./fitKernel.js";
import { fitLogistic } from "./fitLogistic.js";
import { fitNeighbours, type StrangenessScale } from "./fitNeighbours.js";
import { growForest } from "./growForest.js";
import type { Labels } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";
import type { Table } from "./table.js";

/** Settings of the plain models, chosen inside the split. */
export interface PlainSettings {
  readonly penalty: number;
  readonly humidityShare: number;
  readonly scale: StrangenessScale;
  /** Trees of a forest, whole, >= 1. */
  readonly trees: number;
  /** Bells of a kernel at most, whole, >= 1. */
  readonly bells: number;
}

/** Everything of one horizon that is fitted without TensorFlow.js. */
export interface FittedHorizon {
  readonly input: InputMap;
  /** All rows, held-out ones too, through that input map. */
  readonly table: Table;
  readonly logistic: LinearModel;
  readonly discriminant: LinearModel;
  readonly trees: Forest;
  readonly kernel: KernelModel;
  readonly secondKernel: SecondKernel;
  /** All rows through the input map of the second kernel. */
  readonly otherTable: Table;
  /** "Unlike anything taught" rests on it too. */
  readonly neighbours: NeighbourModel;
}

/** Standardises one horizon on the rows that count. */
export function standardisedTable(
  raw: HorizonTable,
  labels: Labels,
  weight: Float64Array,
  humidityShare: number,
): { input: InputMap; table: Table } {
  const counted = weight.map((one, row) => one * raw.reached[row]!);
  const input = fitInput(raw, [labels.plates, labels.foods], counted, humidityShare);
  const x = new Float64Array(raw.rows * raw.features);
  for (let row = 0; row < raw.rows; row += 1) {
    const values = raw.values.subarray(row * raw.features, (row + 1) * raw.features);
    const rise = Number.isNaN(raw.rise[row]!) ? null : raw.rise[row]!;
    x.set(standardised(input, values, rise), row * raw.features);
  }
  const { rows, features } = raw;
  const groups = labels.groups.length;
  return { input, table: { rows, features, groups, x, truth: labels.truth, weight: counted } };
}

/**
 * Fits the plain models of one horizon on the rows that count.
 *
 * @param other - the other view of the same sniffs, for the second kernel
 */
export function fitHorizon(
  raw: HorizonTable,
  other: HorizonTable,
  labels: Labels,
  weight: Float64Array,
  settings: PlainSettings,
  random: RandomSource,
): FittedHorizon {
  const { input, table } = standardisedTable(raw, labels, weight, settings.humidityShare);
  const second = standardisedTable(other, labels, weight, settings.humidityShare);
  const kernel = { ...KERNEL, bells: settings.bells };
  const options = { trees: settings.trees, tries: triesFor(table.features), leafRows: 1 };
  return {
    input,
    table,
    logistic: fitLogistic(table, settings.penalty),
    discriminant: fitDiscriminant(table),
    trees: growForest(table, options, random),
    kernel: fitKernel(table, kernel, random),
    secondKernel: { input: second.input, kernel: fitKernel(second.table, kernel, random) },
    otherTable: second.table,
    neighbours: fitNeighbours(table, labels.dishes, labels.plates, settings.scale),
  };
}

/**
 * Features tried at a node, by one tree and the next in turn: the square root, as Geurts and others (2006) advise, and
 * as many as there are, which is better where two channels carry the smell. Which it is nobody knows beforehand.
 */
export function triesFor(features: number): readonly number[] {
  return [Math.ceil(Math.sqrt(features)), features];
}
