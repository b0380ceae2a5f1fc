import type { Nose } from "../nose/nose.js";
import { groupJudge } from "./groupJudge.js";

/** Held-out plates with each group that the rule would have called *not smelled*, at one accepted miss rate. */
export function shownMisses(
  nose: Nose,
  acceptedMissRate: number,
): { readonly group: string; readonly misses: number; readonly plates: number }[] {
  return nose.groups
    .filter(({ horizons }) => horizons.length > 0)
    .map((group) => {
      const judge = groupJudge(group, acceptedMissRate);
      const { misses } = judge.shownErrors(nose.horizons.length - 1);
      return { group: group.name, misses, plates: judge.heldOutPresent };
    });
}
