/**
 * What several walks through the app say of each step; each walk counts as a visit.
 *
 * @see J. Wagner, "Interaction to Next Paint (INP)", web.dev, 2022: which answers count, and the percentile
 */
import { median } from "../../src/stats/summary.js";
import type { Interaction } from "./interactionTimes.js";

export interface StepTime {
  readonly step: string;
  readonly medianMs: number;
  /** Interaction to next paint: the worst answer of a visit, at the 75th percentile of the visits (nearest rank). */
  readonly inpMs: number;
  readonly worst: Interaction;
}

export interface WalkTimes {
  add(step: string, answers: readonly Interaction[]): void;
  steps(): StepTime[];
  /** How many answers were measured in all walks. */
  count(): number;
  /** How many of them took longer. */
  countOver(ms: number): number;
}

export function createWalkTimes(): WalkTimes {
  const worstOf = new Map<string, Interaction[]>();
  const all: number[] = [];
  return {
    add(step, answers) {
      all.push(...answers.map(({ ms }) => ms));
      worstOf.set(step, [...(worstOf.get(step) ?? []), worstAmong(answers)]);
    },
    steps: () =>
      [...worstOf].map(([step, walks]) => {
        const times = walks.map(({ ms }) => ms);
        return { step, medianMs: median(times), inpMs: nearestRank(times, 0.75), worst: worstAmong(walks) };
      }),
    count: () => all.length,
    countOver: (limitMs) => all.filter((ms) => ms > limitMs).length,
  };
}

/** The smallest of the values that at least this share of them does not exceed. */
const nearestRank = (values: readonly number[], share: number): number =>
  values.toSorted((a, b) => a - b)[Math.ceil(share * values.length) - 1] ?? NaN;

const worstAmong = (answers: readonly Interaction[]): Interaction =>
  answers.reduce((most, one) => (one.ms > most.ms ? one : most), { ms: 0, what: "" });
