/** Where a moved nose draws the line to what is unlike anything taught. */
import type { SnifferMap } from "../features/snifferMap.js";
import { UNLIKE_RATE } from "../finding/bands.js";
import { answerSniff } from "../nose/answer.js";
import type { HorizonNose, Nose, NoseTransfer } from "../nose/nose.js";
import { tellTaught } from "../nose/tellTaught.js";
import type { Sniff } from "../sniff/sniff.js";
import { median, quantile } from "../stats/summary.js";
import { LEAST_PAIRS } from "./transferGain.js";

/**
 * What a map leaves between two sniffers moves every plate away from the taught ones. By how much is read off the pairs:
 * the median ratio of a plate's strangeness on the second sniffer, through a map fitted without it, to that on the
 * first. The held-out distances and the usual one grow by it, but never by more than `mostWidened`. A pair of unknown food is strange on
 * both, and widens nothing.
 *
 * @param bare - the moved nose, still with the distances of the first sniffer
 * @param heldOutMaps - for each paired plate the map that was fitted without it
 * @returns the horizons; as they were where fewer than `LEAST_PAIRS` untaught plates were sniffed on both
 */
export function movedHorizons(
  taught: Nose,
  bare: Nose & { readonly transfer: NoseTransfer },
  first: readonly Sniff[],
  second: readonly Sniff[],
  heldOutMaps: ReadonlyMap<string, SnifferMap>,
): HorizonNose[] {
  const knows = tellTaught(taught);
  const plates = [...heldOutMaps].filter(
    ([plate]) => !first.some((one) => one.plate === plate && knows(one)),
  );
  const pairs = plates.flatMap(([plate, map]) => {
    const through: Nose = { ...bare, transfer: { ...bare.transfer, map } };
    const own = strangeness(taught, first, plate);
    const other = strangeness(through, second, plate);
    return own === null || other === null ? [] : [{ own, other }];
  });
  return taught.horizons.map((horizon, at) => {
    if (pairs.length < LEAST_PAIRS) return horizon;
    const ratios = pairs.map(({ own, other }) => (other[at] ?? Number.NaN) / (own[at] ?? Number.NaN));
    const finite = ratios.filter(Number.isFinite);
    if (finite.length < LEAST_PAIRS) return horizon;
    const factor = Math.min(mostWidened(horizon.heldOutDistances), Math.max(1, median(finite)));
    const { heldOutDistances, usualDistance } = horizon;
    return {
      ...horizon,
      heldOutDistances: heldOutDistances.map((one) => factor * one),
      usualDistance: usualDistance === undefined ? undefined : Math.fround(factor * usualDistance),
    };
  });
}

/**
 * By how much the line may be moved at most: by what brings the typical held-out plate of the first sniffer just up to
 * it. Where a map moves plates by more, half of them are, by all that was taught, like nothing that was taught; then
 * the honest word for them is *unlike*, and no other line.
 *
 * @param heldOutDistances - at least one, all above 0
 * @returns at least 1
 */
export function mostWidened(heldOutDistances: ArrayLike<number>): number {
  return quantile(heldOutDistances, 1 - UNLIKE_RATE) / median(heldOutDistances);
}

/** Mean over a plate's sniffs, one for each horizon; null where none reached the last of them. */
function strangeness(nose: Nose, sniffs: readonly Sniff[], plate: string): number[] | null {
  const answers = sniffs.flatMap((sniff) => {
    if (sniff.plate !== plate) return [];
    const answer = answerSniff(nose, sniff);
    const isWhole = answer.kind === "answered" && answer.horizons.length === nose.horizons.length;
    return isWhole ? [answer.horizons] : [];
  });
  if (answers.length === 0) return null;
  return nose.horizons.map(
    (_, at) => answers.reduce((sum, horizons) => sum + (horizons[at]?.strangeness ?? 0), 0) / answers.length,
  );
}
