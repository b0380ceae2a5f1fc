import type { Recipe } from "../features/recipe.js";
import { seededRandom, shuffled } from "../kernel/random.js";
import type { LearningPoint } from "../nose/report.js";
import { sigmoid, softplus } from "../stats/logistic.js";
import { rocAuc } from "../stats/scores.js";
import { dealFolds } from "./dealFolds.js";
import { standardisedTable } from "./fitHorizon.js";
import { horizonsOf } from "./horizonsOf.js";
import { type Prepared, truthsOfRow } from "./prepareSamples.js";
import { quickScores } from "./quickScores.js";
import { rawTables } from "./rawTables.js";

const SHARES = [0.25, 0.5, 0.75, 1];
const FOLDS = 5;

/**
 * Learning curve: held-out scores of a quick model taught on a growing share of the plates of each fold.
 *
 * Its last point is not the nose's own score, because the nose mixes more models; its slope says whether more plates
 * would help.
 */
export function learningCurve(
  prepared: Prepared,
  recipe: Recipe,
  humidityShare: number,
  seed: number,
): LearningPoint[] {
  const random = seededRandom(seed);
  const groups = prepared.groups.length;
  const raw = rawTables(prepared.sniffs, recipe, [horizonsOf(prepared.sniffs).at(-1)!])[0]!;
  const foldOf = dealFolds(prepared.plates, (row) => truthsOfRow(prepared, row), FOLDS, random);
  return SHARES.map((share) => {
    const scores = new Float64Array(raw.rows * groups);
    let plates = 0;
    for (let fold = 0; fold < FOLDS; fold += 1) {
      const own = new Set(prepared.plates.filter((_, row) => foldOf[row] !== fold));
      const kept = new Set(shuffled([...own], random).slice(0, Math.max(2, Math.round(share * own.size))));
      plates += kept.size / FOLDS;
      const weight = prepared.weight.map((one, row) => (kept.has(prepared.plates[row]!) ? one : 0));
      const { table } = standardisedTable(raw, prepared, weight, humidityShare);
      const held = [...foldOf.keys()].filter((row) => foldOf[row] === fold);
      quickScores(table, held, random).forEach((one, i) => scores.set(one, held[i]! * groups));
    }
    return { plates: Math.round(plates), ...scored(prepared, scores) };
  });
}

function scored(prepared: Prepared, scores: Float64Array): Omit<LearningPoint, "plates"> {
  const groups = prepared.groups.length;
  let [loss, wrong, cases] = [0, 0, 0];
  const aucs: number[] = [];
  for (let group = 0; group < groups; group += 1) {
    const rows = [...prepared.plates.keys()].filter((row) => prepared.truth[row * groups + group]! >= 0);
    const own = rows.map((row) => scores[row * groups + group]!);
    const truth = rows.map((row) => prepared.truth[row * groups + group]!);
    own.forEach((logit, i) => {
      loss += softplus(logit) - truth[i]! * logit;
      wrong += sigmoid(logit) >= 0.5 === (truth[i] === 1) ? 0 : 1;
      cases += 1;
    });
    const auc = rocAuc(own, truth);
    if (auc !== null) aucs.push(auc);
  }
  const auc = aucs.length === 0 ? null : aucs.reduce((a, b) => a + b, 0) / aucs.length;
  return { logLoss: loss / Math.max(1, cases), auc, error: wrong / Math.max(1, cases) };
}
