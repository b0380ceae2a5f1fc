import { type RandomSource, shuffled } from "../kernel/random.js";

/**
 * Deals units (plates, or occasions) to folds so that each kind of unit is spread evenly.
 *
 * @param units - number of each row's unit, shape [rows]
 * @param kindOfRow - what a row is like; units whose rows are alike are dealt out one after another
 * @param folds - whole, >= 2
 * @returns fold of each row, shape [rows]; all rows of a unit share it
 */
export function dealFolds(
  units: Int32Array,
  kindOfRow: (row: number) => string,
  folds: number,
  random: RandomSource,
): Int32Array {
  const kinds = new Map<number, Set<string>>();
  units.forEach((unit, row) => kinds.set(unit, (kinds.get(unit) ?? new Set()).add(kindOfRow(row))));
  const named = [...kinds].map(([unit, set]) => ({ unit, kind: [...set].sort().join("\n") }));
  const order = shuffled(named, random).sort((a, b) => (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0));
  const foldOf = new Map(order.map(({ unit }, i) => [unit, i % folds]));
  return Int32Array.from(units, (unit) => foldOf.get(unit)!);
}
