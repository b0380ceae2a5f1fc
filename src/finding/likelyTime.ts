import type { Nose } from "../nose/nose.js";
import { clopperPearsonUpper } from "../stats/proportionInterval.js";
import { type GroupJudge, groupJudge, type Label } from "./groupJudge.js";

/**
 * Headspace time that a check is likely to take: the first horizon by which at least half of the held-out plates would
 * have had their word for every group asked for; the last horizon if there is none, for then a check runs its full time.
 *
 * @param allergyGroups - groups that are never cleared: only *smelled* ends the wait for them
 * @returns milliseconds, or null if the nose knows none of the groups
 */
export function likelyTimeMs(
  nose: Nose,
  groups: readonly string[],
  acceptedMissRate: number,
  allergyGroups: readonly string[] = [],
): number | null {
  const known = nose.groups.filter(({ name, horizons }) => groups.includes(name) && horizons.length > 0);
  if (known.length === 0) return null;
  const first = nose.horizons.findIndex((_, place) => {
    const isTold = new Map<number, boolean>();
    for (const group of known) {
      const judge = groupJudge(group, acceptedMissRate);
      const counts = countingLabels(judge, place, acceptedMissRate, allergyGroups.includes(group.name));
      group.truth.forEach((_truth, i) => {
        const label = judge.heldOutLabels(i)[place] ?? null;
        const plate = group.plate[i] ?? 0;
        isTold.set(plate, (isTold.get(plate) ?? true) && label !== null && counts.includes(label));
      });
    }
    const told = [...isTold.values()].filter(Boolean).length;
    return isTold.size > 0 && 2 * told >= isTold.size;
  });
  return (nose.horizons[first] ?? nose.horizons.at(-1))?.fromMs ?? null;
}

/** The labels that would become a word by then, as `findPlate` has it. */
function countingLabels(
  judge: GroupJudge,
  place: number,
  acceptedMissRate: number,
  isAllergy: boolean,
): Label[] {
  const { misses } = judge.shownErrors(place);
  const isShown = clopperPearsonUpper(misses, judge.heldOutPresent) <= acceptedMissRate;
  return [
    ...(judge.canAlarm() ? (["present"] as const) : []),
    ...(isShown && !isAllergy ? (["absent"] as const) : []),
  ];
}
