import { seededRandom } from "../kernel/random.js";
import type { NeighbourModel } from "../nose/models.js";
import { nearestFirst, strangenessOf, whitened } from "../nose/neighbourLogits.js";
import { rocAuc } from "../stats/scores.js";
import { dealFolds } from "./dealFolds.js";
import { standardisedTable } from "./fitHorizon.js";
import { fitNeighbours, type StrangenessScale } from "./fitNeighbours.js";
import { type Labels, type Prepared, truthsOfRow } from "./prepareSamples.js";
import type { HorizonTable } from "./rawTables.js";
import { rowOf } from "./table.js";

/** What the sniffs are known to be of, and how much each counts. */
export type DishLabels = Labels & Pick<Prepared, "weight">;

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
  /** Folds of plates for the known food, whole, >= 2. */
  readonly folds: number;
  /** Lots in which the dishes are left out; at least as many as dishes leaves each out alone. */
  readonly dishLots: number;
  readonly seed: number;
}

/** Strangeness of dishes left out against that of held-out plates whose dish was taught. */
export function foodDistances(
  raw: HorizonTable,
  prepared: DishLabels,
  { scale, ...options }: DistanceOptions & { readonly scale: StrangenessScale },
): UnlikeReport | null {
  return distancesOn([scale], raw, prepared, options)?.[0] ?? null;
}

/** The same on several scales at once, which takes hardly longer than one. @returns one report a scale, or null */
export function distancesOn(
  scales: readonly StrangenessScale[],
  raw: HorizonTable,
  prepared: DishLabels,
  options: DistanceOptions,
): readonly UnlikeReport[] | null {
  const { dishes, plates } = prepared;
  const foods = new Set(dishes).size;
  if (foods < 3 || foods === new Set(plates).size) return null;
  const random = seededRandom(options.seed);
  const lots = Math.min(options.dishLots, foods);
  const foldOf = dealFolds(plates, (row) => String(dishes[row]), options.folds, random);
  const lotOf = dealFolds(dishes, (row) => truthsOfRow(prepared, row), lots, random);
  const knownRows = [...foldOf.keys()].filter((row) => isDishTaught(prepared, foldOf, row));
  if (knownRows.length < LEAST_KNOWN) return null;
  const strangeness = (partOf: Int32Array, parts: number) => {
    const into = scales.map(() => new Float64Array(raw.rows));
    for (let part = 0; part < parts; part += 1)
      strangenessWithout(raw, prepared, { ...options, scales }, partOf, part, into);
    return into;
  };
  const held = strangeness(foldOf, options.folds);
  const unknowns = strangeness(lotOf, lots);
  return scales.map((scale, at) => {
    const known = Float64Array.from(knownRows, (row) => held[at]![row]!);
    return { foods, ...told(known, unknowns[at]!), knownSniffs: known.length, scale };
  });
}

/** How well a limit on the strangeness parts known from unknown food. */
function told(known: Float64Array, unknown: Float64Array): Pick<UnlikeReport, "auroc" | "unknownFlagged"> {
  const truth = [...known].map(() => 0).concat([...unknown].map(() => 1));
  const limit = known.toSorted()[Math.ceil(FLAG_LEVEL * known.length) - 1]!;
  return {
    auroc: rocAuc([...known, ...unknown], truth),
    unknownFlagged: unknown.filter((strangeness) => strangeness > limit).length / unknown.length,
  };
}

/** Whether a row's dish was also taught while its own fold was held out. */
export function isDishTaught(prepared: DishLabels, foldOf: Int32Array, row: number): boolean {
  return prepared.dishes.some(
    (dish, other) => dish === prepared.dishes[row] && foldOf[other] !== foldOf[row],
  );
}

/** Strangeness of each row of a part among the plates of the rest, on each scale. */
function strangenessWithout(
  raw: HorizonTable,
  prepared: DishLabels,
  { humidityShare, scales }: Pick<DistanceOptions, "humidityShare"> & { scales: readonly StrangenessScale[] },
  partOf: Int32Array,
  part: number,
  into: readonly Float64Array[],
): void {
  const weight = prepared.weight.map((one, row) => (partOf[row] === part ? 0 : one));
  const { table } = standardisedTable(raw, prepared, weight, humidityShare);
  const wanted = scales.includes("local") ? "local" : "plain";
  const fitted = fitNeighbours(table, prepared.dishes, prepared.plates, wanted);
  const { localScale: _local, ...rest } = fitted;
  const plain: NeighbourModel = rest;
  for (let row = 0; row < raw.rows; row += 1) {
    if (partOf[row] !== part) continue;
    const near = nearestFirst(fitted, whitened(fitted, rowOf(table, row)));
    scales.forEach((scale, at) => {
      into[at]![row] = strangenessOf(scale === "local" ? fitted : plain, near);
    });
  }
}
