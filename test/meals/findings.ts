import type { GroupFinding, PlateFinding } from "../../src/finding/finding.js";

/** A finding as the finding station gives it, with every kind of member filled in. */
export const plateFinding: PlateFinding = {
  format: "nidor-finding/1",
  sniffId: "s1",
  headspaceMs: 30_000,
  acceptedMissRate: 0.05,
  groups: [
    {
      group: "meat",
      verdict: "uncertain",
      probability: 0.42,
      interval: { low: 0.2, high: 0.6 },
      belief: { before: 0.5, likelihoodRatio: 0.72, after: 0.42 },
      set: ["present", "absent"],
      reasons: [
        { kind: "bothPossible" },
        { kind: "tooFewPlates", truth: "present", plates: 14, bestShowable: 0.19, needed: 59 },
      ],
      basis: {
        noseId: "n1",
        noseName: "market nose",
        taughtAt: "2026-11-20T10:00:00Z",
        platesTaught: 40,
        heldOutPresent: 14,
        heldOutAbsent: 26,
        misses: 1,
        missRateUpper: 0.3,
        falseAlarms: 2,
      },
    },
  ],
};

/** A short finding for one group. */
export const found = (
  group: string,
  verdict: GroupFinding["verdict"],
  probability: number | null = null,
): PlateFinding => ({
  ...plateFinding,
  groups: [{ group, verdict, probability, interval: null, set: [], reasons: [], basis: null }],
});
