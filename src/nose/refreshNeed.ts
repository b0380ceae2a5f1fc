import type { Nose } from "./nose.js";
import { refreshAdvice, type RefreshAdvice } from "./refreshAdvice.js";
import { type SampleOrigin, tellFresh } from "./tellFresh.js";
import { tellTaught } from "./tellTaught.js";

/** A sample, with what is known of its plate. */
export interface FreshCandidate extends SampleOrigin {
  readonly groups: Readonly<Record<string, string>>;
}

/** What there is to bring a nose up to date with. */
export interface RefreshNeed {
  readonly advice: RefreshAdvice;
  /** Plates of known truth that are fresh for the nose. */
  readonly freshPlates: number;
  /** Plates that the nose was taught, and how many of them are still here as samples. */
  readonly platesTaught: number;
  readonly platesKnown: number;
  /** Fresh plates of each group that the nose knows, by truth. */
  readonly groups: readonly { readonly group: string; readonly present: number; readonly absent: number }[];
}

/**
 * Counts the fresh plates by group, beside the advice whether they are worthwhile.
 *
 * @param now - ISO 8601 instant
 * @param snifferInControl - the check jar's word; undefined if it was not asked
 */
export function refreshNeed(
  nose: Nose,
  samples: readonly FreshCandidate[],
  now: string,
  snifferInControl: boolean | undefined,
): RefreshNeed {
  const isFresh = tellFresh(nose);
  const fresh = samples.filter(isFresh);
  const count = (from: readonly FreshCandidate[]) => new Set(from.map(({ plate }) => plate)).size;
  const plates = (test: (groups: FreshCandidate["groups"]) => boolean) =>
    count(fresh.filter(({ groups }) => test(groups)));
  const names = nose.groups.map(({ name }) => name);
  return {
    advice: refreshAdvice(nose.taughtAt, now, snifferInControl),
    freshPlates: plates((groups) => Object.values(groups).some((truth) => truth !== "unknown")),
    platesTaught: nose.platesTaught,
    platesKnown: count(samples.filter(tellTaught(nose))),
    groups: names.map((group) => ({
      group,
      present: plates((groups) => groups[group] === "present"),
      absent: plates((groups) => groups[group] === "absent"),
    })),
  };
}
