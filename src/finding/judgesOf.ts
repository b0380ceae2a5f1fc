import type { Nose } from "../nose/nose.js";
import { groupJudge } from "./groupJudge.js";

/**
 * Works out the rules of a nose, one group a step, so that a page can answer in between; they are kept for later.
 *
 * @param acceptedMissRate - fraction, above 0 and at most 1
 */
export function* judgesOf(nose: Nose, acceptedMissRate: number): Generator<void> {
  for (const group of nose.groups) {
    groupJudge(group, acceptedMissRate).canAlarm();
    yield;
  }
}
