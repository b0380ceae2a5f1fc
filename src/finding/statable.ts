import type { Nose } from "../nose/nose.js";
import { leastCalibrationCount } from "../stats/conformal.js";
import { trialsToShow } from "../stats/proportionInterval.js";
import { FALSE_ALARM_RATE } from "./bands.js";
import { groupJudge } from "./groupJudge.js";

/** Names of the groups for which each certain verdict can come at all. */
export interface Statable {
  readonly smelled: readonly string[];
  readonly notSmelled: readonly string[];
}

/**
 * For which groups a nose has met and shown enough to say *smelled* or *not smelled*; all others are always uncertain.
 *
 * @param acceptedMissRate - fraction, above 0 and at most 1
 * @throws {RangeError} if that rate is out of range
 */
export function statable(nose: Nose, acceptedMissRate: number): Statable {
  const judged = nose.groups
    .filter(({ horizons }) => horizons.length > 0)
    .map((group) => ({ name: group.name, judge: groupJudge(group, acceptedMissRate) }));
  const namesOf = (can: (one: (typeof judged)[number]) => boolean) =>
    judged.filter(can).map(({ name }) => name);
  return {
    smelled: namesOf(
      ({ judge }) => judge.heldOutAbsent >= leastCalibrationCount(FALSE_ALARM_RATE) && judge.canAlarm(),
    ),
    notSmelled: namesOf(({ judge }) => {
      const { misses } = judge.shownErrors(nose.horizons.length - 1);
      return judge.heldOutPresent >= trialsToShow(acceptedMissRate, misses);
    }),
  };
}
