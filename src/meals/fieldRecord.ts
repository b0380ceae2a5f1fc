/** How right the findings were at the table, as far as the truth became known. */
import type { GroupTruth } from "../kernel/groups.js";
import type { Interval } from "../stats/interval.js";
import { clopperPearson } from "../stats/proportionInterval.js";
import { brierScore, reliabilityCurve, type ReliabilityBin } from "../stats/scores.js";
import { SNAPSHOT_VERDICTS, type SnapshotVerdict } from "./findingSnapshot.js";
import { groupBy } from "./groupBy.js";
import type { Meal } from "./meal.js";

/** Bins of the reliability curve: few, because a person has tens of confirmed meals, not thousands. */
const RELIABILITY_BINS = 5;

/** A share with its exact 95 % interval (Clopper and Pearson). `share` is null where nothing was counted. */
export interface CountedShare {
  readonly count: number;
  readonly of: number;
  readonly share: number | null;
  readonly interval: Interval;
}

/** Findings for one group against what the plates turned out to hold. */
export interface FieldRecord {
  readonly group: string;
  /** Every finding, confirmed or not. */
  readonly said: Readonly<Record<SnapshotVerdict, number>>;
  /** Confirmed plates by what was said of them. */
  readonly whenPresent: Readonly<Record<SnapshotVerdict, number>>;
  readonly whenAbsent: Readonly<Record<SnapshotVerdict, number>>;
  /** Confirmed findings of all findings. People ask more often after a surprise, so the rest may differ. */
  readonly confirmed: CountedShare;
  /** *Smelled* among present plates that got one of the two words; *uncertain* is counted apart. */
  readonly sensitivity: CountedShare;
  /** *Not smelled* among absent plates that got one of the two words. */
  readonly specificity: CountedShare;
  /** Were the probabilities right in the field? null without a confirmed plate that had one. */
  readonly reliability: FieldReliability | null;
}

/** Probabilities against what happened, on confirmed plates. */
export interface FieldReliability {
  readonly plates: number;
  readonly bins: readonly ReliabilityBin[];
  /** 0 best, 1 worst. */
  readonly brier: number;
}

/** One finding and what its plate turned out to hold. */
interface Case {
  readonly group: string;
  readonly verdict: SnapshotVerdict;
  readonly probability: number | null;
  readonly truth: GroupTruth;
}

/** One record for each group that any finding names, by name. Deleted meals must have been left out. */
export function fieldRecords(meals: readonly Meal[]): FieldRecord[] {
  const cases = meals.flatMap((meal) =>
    (meal.finding?.groups ?? []).map(({ group, verdict, probability }): Case => {
      return { group, verdict, probability, truth: meal.truth?.groups[group] ?? "unknown" };
    }),
  );
  return [...groupBy(cases, ({ group }) => group)]
    .sort(([left], [right]) => (left < right ? -1 : 1))
    .map(([group, those]) => recordOf(group, those));
}

function recordOf(group: string, cases: readonly Case[]): FieldRecord {
  const present = cases.filter(({ truth }) => truth === "present");
  const absent = cases.filter(({ truth }) => truth === "absent");
  const whenPresent = countVerdicts(present);
  const whenAbsent = countVerdicts(absent);
  return {
    group,
    said: countVerdicts(cases),
    whenPresent,
    whenAbsent,
    confirmed: countedShare(present.length + absent.length, cases.length),
    sensitivity: countedShare(whenPresent.smelled, whenPresent.smelled + whenPresent["not smelled"]),
    specificity: countedShare(whenAbsent["not smelled"], whenAbsent.smelled + whenAbsent["not smelled"]),
    reliability: reliabilityOf([...present, ...absent]),
  };
}

function countVerdicts(cases: readonly Case[]): Record<SnapshotVerdict, number> {
  const counts = Object.fromEntries(SNAPSHOT_VERDICTS.map((verdict) => [verdict, 0]));
  for (const { verdict } of cases) counts[verdict] = (counts[verdict] ?? 0) + 1;
  return counts as Record<SnapshotVerdict, number>;
}

/** A count of a whole, with its exact interval. @throws {RangeError} if the count is beyond the whole */
export function countedShare(count: number, of: number): CountedShare {
  return { count, of, share: of === 0 ? null : count / of, interval: clopperPearson(count, of) };
}

function reliabilityOf(confirmed: readonly Case[]): FieldReliability | null {
  const told = confirmed.flatMap(({ probability, truth }) =>
    probability === null ? [] : [{ probability, present: truth === "present" ? 1 : 0 }],
  );
  if (told.length === 0) return null;
  const predicted = Float64Array.from(told, ({ probability }) => probability);
  const happened = Uint8Array.from(told, ({ present }) => present);
  return {
    plates: told.length,
    bins: reliabilityCurve(predicted, happened, RELIABILITY_BINS),
    brier: brierScore(predicted, happened),
  };
}
