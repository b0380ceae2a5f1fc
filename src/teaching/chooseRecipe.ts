import { type RandomSource } from "../kernel/random.js";
import { RECIPES, type Recipe } from "../features/recipe.js";
import { forestLogits } from "../nose/forestLogits.js";
import { linearLogits } from "../nose/linearLogits.js";
import { softClipped } from "../nose/mixLogits.js";
import { softplus } from "../stats/logistic.js";
import { standardisedTable, triesFor } from "./fitHorizon.js";
import { fitLogistic } from "./fitLogistic.js";
import { growForest } from "./growForest.js";
import type { HorizonSpan } from "./horizonsOf.js";
import type { Prepared } from "./prepareSamples.js";
import { rawTables } from "./rawTables.js";
import { rowOf } from "./table.js";

/** What was compared, and what won. */
export interface RecipeChoice {
  readonly recipe: Recipe;
  readonly penalty: number;
  readonly compared: readonly { readonly id: number; readonly name: string; readonly logLoss: number }[];
}

/** Penalties compared for the logistic regression: a tenth, one and ten times the usual default. */
const PENALTIES = [0.1, 1, 10];
const TRIAL_TREES = 25;
/** A recipe further down the list must be better by this share of the log loss. Common practice: prefer the simpler. */
const CLEAR_GAIN = 0.02;

/**
 * Compares the recipes by held-out log loss of quick trees and a logistic regression together, at the last horizon.
 *
 * @param foldOf - fold of each row, shape [rows]
 */
export function chooseRecipe(
  prepared: Prepared,
  span: HorizonSpan,
  foldOf: Int32Array,
  random: RandomSource,
): RecipeChoice {
  const candidates = RECIPES.filter(({ reference }) =>
    reference === "start" ? !prepared.hasCleanAir : reference === "none" || prepared.hasCleanAir,
  );
  const tried = candidates.map((recipe) => ({ recipe, ...trial(prepared, recipe, span, foldOf, random) }));
  let best = tried[0]!;
  for (const one of tried) if (one.logLoss < best.logLoss * (1 - CLEAR_GAIN)) best = one;
  return {
    recipe: best.recipe,
    penalty: best.penalty,
    compared: tried.map(({ recipe, logLoss }) => ({ id: recipe.id, name: recipe.name, logLoss })),
  };
}

function trial(
  prepared: Prepared,
  recipe: Recipe,
  span: HorizonSpan,
  foldOf: Int32Array,
  random: RandomSource,
): { penalty: number; logLoss: number } {
  const raw = rawTables(prepared.sniffs, recipe, [span])[0]!;
  const losses = new Float64Array(PENALTIES.length);
  const together = new Float64Array(PENALTIES.length);
  let cases = 0;
  for (const fold of new Set(foldOf)) {
    const weight = prepared.weight.map((one, row) => (foldOf[row] === fold ? 0 : one));
    const { table } = standardisedTable(raw, prepared, weight, recipe.reference === "cleanAir");
    const lines = PENALTIES.map((penalty) => fitLogistic(table, penalty));
    const options = { trees: TRIAL_TREES, tries: triesFor(table.features), leafRows: 1 };
    const trees = growForest(table, options, random);
    for (let row = 0; row < raw.rows; row += 1) {
      if (foldOf[row] !== fold || raw.reached[row] === 0) continue;
      const x = rowOf(table, row);
      const grown = forestLogits(trees, x, table.groups);
      lines.forEach((line, i) => {
        linearLogits(line, x).forEach((logit, group) => {
          const truth = prepared.truth[row * table.groups + group]!;
          if (truth < 0) return;
          const clipped = softClipped(logit);
          losses[i]! += prepared.weight[row]! * lossOf(clipped, truth);
          together[i]! += prepared.weight[row]! * lossOf((clipped + softClipped(grown[group]!)) / 2, truth);
          if (i === 0) cases += prepared.weight[row]!;
        });
      });
    }
  }
  const best = [...losses.keys()].reduce((a, b) => (losses[b]! < losses[a]! ? b : a));
  return { penalty: PENALTIES[best]!, logLoss: together[best]! / Math.max(cases, 1e-9) };
}

function lossOf(logit: number, truth: number): number {
  return softplus(logit) - truth * logit;
}
