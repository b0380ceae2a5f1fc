import { seededRandom } from "../kernel/random.js";
import { nearestPlates, whitened } from "../nose/neighbourLogits.js";
import { rocAuc } from "../stats/scores.js";
import { dealFolds } from "./dealFolds.js";
import { standardisedTable } from "./fitHorizon.js";
import { fitNeighbours, type StrangenessScale } from "./fitNeighbours.js";
import { type Prepared, truthsOfRow } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";
import { rowOf } from "./table.js";

/** How well "unlike anything taught" tells food that was never taught. */
export interface UnlikeReport {
  readonly foods: number;
  /** Strangeness of sniffs of a food left out against that of held-out plates of taught foods; chance is 0.5. */
  readonly auroc: number | null;
  /** Share of the sniffs of left-out foods that are stranger than 95 % of the held-out ones. */
  readonly unknownFlagged: number;
  /** Held-out sniffs whose dish was taught from another plate: only these are known food. */
  readonly knownSniffs: number;
  readonly scale: StrangenessScale;
}

const FLAG_LEVEL = 0.95;
/** With fewer known sniffs an AUROC says nothing. Common practice. */
const LEAST_KNOWN = 10;

interface DistanceOptions {
  readonly humidityShare: number;
  readonly scale: StrangenessScale;
  /** Folds of plates for the known food, whole, >= 2. */
  readonly folds: number;
  /** Lots in which the dishes are left out; at least as many as dishes leaves each out alone. */
  readonly dishLots: number;
  readonly seed: number;
}

/** Strangeness of dishes left out against that of held-out plates whose dish was taught. */
export function foodDistances(
  raw: HorizonTable,
  prepared: Prepared,
  options: DistanceOptions,
): UnlikeReport | null {
  const { dishes, plates } = prepared;
  const foods = new Set(dishes).size;
  if (foods < 3 || foods === new Set(plates).size) return null;
  const random = seededRandom(options.seed);
  const lots = Math.min(options.dishLots, foods);
  const foldOf = dealFolds(plates, (row) => String(dishes[row]), options.folds, random);
  const lotOf = dealFolds(dishes, (row) => truthsOfRow(prepared, row), lots, random);
  const held = new Float64Array(raw.rows);
  for (let fold = 0; fold < options.folds; fold += 1)
    strangenessWithout(raw, prepared, options, foldOf, fold, held);
  const known = held.filter((_, row) => isDishTaught(prepared, foldOf, row));
  if (known.length < LEAST_KNOWN) return null;
  const unknown = new Float64Array(raw.rows);
  for (let lot = 0; lot < lots; lot += 1) strangenessWithout(raw, prepared, options, lotOf, lot, unknown);
  const truth = [...known.map(() => 0), ...unknown.map(() => 1)];
  const limit = Float64Array.from(known).sort()[Math.ceil(FLAG_LEVEL * known.length) - 1]!;
  return {
    foods,
    auroc: rocAuc([...known, ...unknown], truth),
    unknownFlagged: unknown.filter((strangeness) => strangeness > limit).length / unknown.length,
    knownSniffs: known.length,
    scale: options.scale,
  };
}

/** Whether a row's dish was also taught while its own fold was held out. */
export function isDishTaught(prepared: Prepared, foldOf: Int32Array, row: number): boolean {
  return prepared.dishes.some(
    (dish, other) => dish === prepared.dishes[row] && foldOf[other] !== foldOf[row],
  );
}

/** Strangeness of each row of a part among the plates of the rest. */
function strangenessWithout(
  raw: HorizonTable,
  prepared: Prepared,
  { humidityShare, scale }: DistanceOptions,
  partOf: Int32Array,
  part: number,
  into: Float64Array,
): void {
  const weight = prepared.weight.map((one, row) => (partOf[row] === part ? 0 : one));
  const { table } = standardisedTable(raw, prepared, weight, humidityShare);
  const model = fitNeighbours(table, prepared.dishes, prepared.plates, scale);
  for (let row = 0; row < raw.rows; row += 1)
    if (partOf[row] === part)
      into[row] = nearestPlates(model, whitened(model, rowOf(table, row)), table.groups).strangeness;
}
