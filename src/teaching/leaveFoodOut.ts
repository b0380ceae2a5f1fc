import type { Recipe } from "../features/recipe.js";
import { seededRandom } from "../kernel/random.js";
import { nearestPlates, whitened } from "../nose/neighbourLogits.js";
import { rocAuc } from "../stats/scores.js";
import { dealFolds } from "./dealFolds.js";
import { standardisedTable } from "./fitHorizon.js";
import { fitNeighbours } from "./fitNeighbours.js";
import { horizonsOf } from "./horizonsOf.js";
import type { Prepared } from "./prepareSamples.js";
import { type HorizonTable, rawTables } from "./rawTables.js";
import { rowOf } from "./table.js";

/** How well "unlike anything taught" tells food that was never taught. */
export interface UnlikeReport {
  readonly foods: number;
  /** Strangeness of sniffs of a food left out against that of held-out plates of taught foods; chance is 0.5. */
  readonly auroc: number | null;
  /** Share of the sniffs of left-out foods that are stranger than 95 % of the held-out ones. */
  readonly unknownFlagged: number;
}

const FOLDS = 10;
const FLAG_LEVEL = 0.95;

/** Leaves each dish out in turn. Null if there are fewer than three dishes, or each plate is its own dish. */
export function leaveFoodOut(prepared: Prepared, recipe: Recipe, seed: number): UnlikeReport | null {
  const dishes = new Set(prepared.dishes);
  if (dishes.size < 3 || dishes.size === new Set(prepared.plates).size) return null;
  const raw = rawTables(prepared.sniffs, recipe, [horizonsOf(prepared.sniffs).at(-1)!])[0]!;
  const kindOf = (row: number) => String(prepared.dishes[row]);
  const foldOf = dealFolds(prepared.plates, kindOf, FOLDS, seededRandom(seed));
  const known = new Float64Array(raw.rows);
  for (let fold = 0; fold < FOLDS; fold += 1)
    strangenessWithout(raw, prepared, recipe, (row) => foldOf[row] === fold, known);
  const unknown = new Float64Array(raw.rows);
  for (const dish of dishes)
    strangenessWithout(raw, prepared, recipe, (row) => prepared.dishes[row] === dish, unknown);
  const truth = [...known.map(() => 0), ...unknown.map(() => 1)];
  const sorted = [...known].sort((a, b) => a - b);
  const limit = sorted[Math.ceil(FLAG_LEVEL * sorted.length) - 1]!;
  return {
    foods: dishes.size,
    auroc: rocAuc([...known, ...unknown], truth),
    unknownFlagged: unknown.filter((strangeness) => strangeness > limit).length / unknown.length,
  };
}

/** Strangeness of each left-out row among the plates of the rest. */
function strangenessWithout(
  raw: HorizonTable,
  prepared: Prepared,
  recipe: Recipe,
  isOut: (row: number) => boolean,
  into: Float64Array,
): void {
  const weight = prepared.weight.map((one, row) => (isOut(row) ? 0 : one));
  const { table } = standardisedTable(raw, prepared, weight, recipe.reference === "cleanAir");
  const model = fitNeighbours(table, prepared.dishes, prepared.plates);
  for (let row = 0; row < raw.rows; row += 1)
    if (isOut(row))
      into[row] = nearestPlates(model, whitened(model, rowOf(table, row)), table.groups).strangeness;
}
