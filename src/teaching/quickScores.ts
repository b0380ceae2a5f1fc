import type { RandomSource } from "../kernel/random.js";
import { forestLogits } from "../nose/forestLogits.js";
import { linearLogits } from "../nose/linearLogits.js";
import { softClipped } from "../nose/mixLogits.js";
import { triesFor } from "./fitHorizon.js";
import { fitLogistic } from "./fitLogistic.js";
import { growForest } from "./growForest.js";
import { rowOf, type Table } from "./table.js";

const TREES = 40;

/**
 * Quick log-odds for rows that do not count in the table: mean of a few trees and a logistic regression.
 *
 * @returns shape [wanted rows][groups]
 */
export function quickScores(table: Table, wanted: readonly number[], random: RandomSource): Float64Array[] {
  const line = fitLogistic(table, 1);
  const options = { trees: TREES, tries: triesFor(table.features), leafRows: 1 };
  const trees = growForest(table, options, random);
  return wanted.map((row) => {
    const x = rowOf(table, row);
    const grown = forestLogits(trees, x, table.groups);
    return linearLogits(line, x).map((logit, group) => (softClipped(logit) + softClipped(grown[group]!)) / 2);
  });
}
