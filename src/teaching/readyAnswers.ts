import { UNLIKE_RATE } from "../finding/bands.js";
import { readyLogits } from "../nose/mixLogits.js";
import { median } from "../stats/summary.js";
import { isDishTaught } from "./foodDistances.js";
import type { HeldOutLogits } from "./heldOutLogits.js";
import type { Prepared } from "./prepareSamples.js";

/** Held-out answers of one horizon as the nose will mix them, and the distances that this rests on. */
export interface ReadyAnswers {
  /** In the order of MODEL_KINDS, ready to be mixed, each of shape [rows, groups]. */
  readonly models: readonly Float64Array[];
  /** Strangeness of each held-out plate of a dish that was taught without it, in rising order. */
  readonly distances: Float32Array;
  /** That of the typical held-out plate; undefined where none was held out, or all lie on taught ones. */
  readonly usualDistance: number | undefined;
}

/**
 * Readies what models said of plates that they never saw.
 *
 * @param foldOf - fold of each row, shape [rows]
 * @param judged - rows that can be judged
 */
export function readyAnswers(
  heldOut: HeldOutLogits,
  prepared: Prepared,
  foldOf: Int32Array,
  judged: readonly number[],
): ReadyAnswers {
  const { models, strangeness } = heldOut;
  const usual = judged.length === 0 ? 0 : median(plateMeans(strangeness, prepared, judged));
  const usualDistance = usual > 0 ? Math.fround(usual) : undefined;
  return {
    models: readyLogits(models, strangeness, usualDistance),
    distances: plateMeans(strangeness, prepared, likeTaught(prepared, foldOf, judged)),
    usualDistance,
  };
}

/**
 * Rows that tell how far a plate of taught food lies from others. A plate whose dish was on no other is itself unknown
 * food, and would loosen the limit to it: it counts only where the others are too few to draw one.
 */
function likeTaught(prepared: Prepared, foldOf: Int32Array, judged: readonly number[]): readonly number[] {
  const known = judged.filter((row) => isDishTaught(prepared, foldOf, row));
  const knownPlates = new Set(known.map((row) => prepared.plates[row]!)).size;
  return (knownPlates + 1) * UNLIKE_RATE >= 1 ? known : judged;
}

/** Mean of each plate over some of the rows, in rising order. */
function plateMeans(values: Float64Array, { plates }: Prepared, rows: readonly number[]): Float32Array {
  const sums = new Map<number, { sum: number; count: number }>();
  for (const row of rows) {
    const plate = plates[row]!;
    const held = sums.get(plate) ?? { sum: 0, count: 0 };
    sums.set(plate, { sum: held.sum + values[row]!, count: held.count + 1 });
  }
  return Float32Array.from([...sums.values()], ({ sum, count }) => sum / count).sort();
}
