import type { Nose } from "../nose/nose.js";
import type { Sniff } from "../sniff/sniff.js";
import { findPlate } from "./findPlate.js";
import type { GroupFinding, Verdict } from "./finding.js";
import type { Label } from "./groupJudge.js";

/** What a nose said of one group, beside the truth as far as it is known. */
export interface JudgedGroup {
  readonly truth: Label | "unknown";
  readonly probability: number | null;
  readonly set: readonly Label[];
  readonly finding: Verdict;
  /** Kinds of the reasons. */
  readonly reasons: readonly string[];
}

export interface JudgedSniff {
  readonly id: string;
  readonly plate: string;
  readonly occasion: string;
  readonly groups: Readonly<Record<string, JudgedGroup>>;
}

/** The line that `check` and `assess` write for one sniff. */
export function judgedSniff(
  nose: Nose,
  sniff: Sniff,
  groups: readonly string[],
  acceptedMissRate: number,
): JudgedSniff {
  const found = findPlate(nose, sniff, { groups, acceptedMissRate, allergyGroups: [] });
  return {
    id: sniff.id,
    plate: sniff.plate,
    occasion: sniff.occasion,
    groups: Object.fromEntries(
      found.groups.map((one) => [one.group, judgedGroup(one, sniff.groups[one.group] ?? "unknown")]),
    ),
  };
}

function judgedGroup(found: GroupFinding, truth: Label | "unknown"): JudgedGroup {
  return {
    truth,
    probability: found.probability,
    set: found.set,
    finding: found.verdict,
    reasons: found.reasons.map(({ kind }) => kind),
  };
}
