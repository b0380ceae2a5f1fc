import type { GroupFinding, PlateFinding, ReasonKind } from "./finding.js";

/** Whether it pays to go on sniffing. */
export type Settled =
  | { readonly kind: "settled" } // every group has its word, or no further sweep can give it one
  | { readonly kind: "stillMoving" } // a group may still be told
  | { readonly kind: "outOfTime" }; // the limit is reached: what is uncertain stays so

/** Reasons that a longer sniff can take away, or that only stand against *not smelled*: *smelled* may still come. */
const MAY_PASS: readonly ReasonKind[] = [
  "allergy",
  "tooFewPlates",
  "missRateNotShown",
  "tooFewSweeps",
  "sweepsLost", // a share of all sweeps: it falls as more come whole
  "stillMoving",
  "bothPossible",
  "neitherFits",
  "weakSignal",
  "unlikeTaught",
];

/**
 * When to stop, from the findings after each sweep so far.
 *
 * Sweeps are correlated and are not counted as evidence one by one: a finding moves only when the nose reaches its
 * next horizon, where it is calibrated anew and the label of the horizon before must come up again. Errors that these
 * repeated looks add are counted in the nose's shown miss rate.
 *
 * @param findings - oldest first, one a sweep
 * @param limitMs - headspace time at which to give up
 * @see Wald, Sequential Analysis (1947), for why looks at correlated sweeps must not be multiplied
 */
export function settled(findings: readonly PlateFinding[], limitMs: number): Settled {
  const last = findings.at(-1);
  if (last === undefined) return { kind: "stillMoving" };
  if (last.groups.every(isDone)) return { kind: "settled" };
  return last.headspaceMs >= limitMs ? { kind: "outOfTime" } : { kind: "stillMoving" };
}

function isDone(finding: GroupFinding): boolean {
  if (finding.verdict !== "uncertain") return true;
  return finding.reasons.some(({ kind }) => !MAY_PASS.includes(kind));
}
