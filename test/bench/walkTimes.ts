/** What several walks through the app say of each step. */
import { median } from "../../src/stats/summary.js";
import type { Interaction } from "./interactionTimes.js";

export interface StepTime {
  readonly step: string;
  /** The middle one of the walks: what else the machine does meets one walk, seldom most of them. */
  readonly medianMs: number;
  readonly worst: Interaction;
}

export interface WalkTimes {
  add(step: string, answers: readonly Interaction[]): void;
  steps(): StepTime[];
  /** How many answers were measured in all walks. */
  count(): number;
}

export function createWalkTimes(): WalkTimes {
  const worstOf = new Map<string, Interaction[]>();
  let count = 0;
  return {
    add(step, answers) {
      count += answers.length;
      worstOf.set(step, [...(worstOf.get(step) ?? []), worstAmong(answers)]);
    },
    steps: () =>
      [...worstOf].map(([step, walks]) => ({
        step,
        medianMs: median(walks.map(({ ms }) => ms)),
        worst: worstAmong(walks),
      })),
    count: () => count,
  };
}

const worstAmong = (answers: readonly Interaction[]): Interaction =>
  answers.reduce((most, one) => (one.ms > most.ms ? one : most), { ms: 0, what: "" });
