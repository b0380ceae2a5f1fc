/**
 * A finding as it was shown, kept in a meal as plain data. No later nose changes it, and this folder does not
 * know the finding station: the shape is written down here, and a type test holds the two together.
 */
import * as v from "valibot";

/** The three words of a finding. */
export const SNAPSHOT_VERDICTS = ["smelled", "not smelled", "uncertain"] as const;
export type SnapshotVerdict = (typeof SNAPSHOT_VERDICTS)[number];

/** Why a finding was uncertain: its kind, and whatever numbers its words need. */
export interface ReasonSnapshot {
  readonly kind: string;
  readonly [detail: string]: unknown;
}

/** What a probability rested on. */
export interface BasisSnapshot {
  readonly noseId: string;
  readonly noseName: string;
  readonly taughtAt: string;
  readonly platesTaught: number;
  readonly heldOutPresent: number;
  readonly heldOutAbsent: number;
  readonly misses: number;
  readonly missRateUpper: number;
  readonly falseAlarms: number;
}

/** The finding for one group, as it was shown. Probabilities are fractions. */
export interface GroupFindingSnapshot {
  readonly group: string;
  readonly verdict: SnapshotVerdict;
  readonly probability: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
  readonly belief?:
    { readonly before: number; readonly likelihoodRatio: number; readonly after: number } | undefined;
  readonly set: readonly ("present" | "absent")[];
  readonly reasons: readonly ReasonSnapshot[];
  readonly basis: BasisSnapshot | null;
}

/** The findings for one plate, as they were shown. */
export interface FindingSnapshot {
  readonly format: "nidor-finding/1";
  readonly sniffId: string;
  readonly headspaceMs: number;
  readonly acceptedMissRate: number;
  readonly groups: readonly GroupFindingSnapshot[];
}

const finite = v.pipe(v.number(), v.finite("must be finite"));
const fraction = v.pipe(finite, v.minValue(0, "must be 0 to 1"), v.maxValue(1, "must be 0 to 1"));
const count = v.pipe(v.number(), v.integer("must be whole"), v.minValue(0, "must not be negative"));

const basisSchema = v.looseObject({
  noseId: v.string(),
  noseName: v.string(),
  taughtAt: v.string(),
  platesTaught: count,
  heldOutPresent: count,
  heldOutAbsent: count,
  misses: count,
  missRateUpper: fraction,
  falseAlarms: count,
});

const groupFindingSchema = v.looseObject({
  group: v.string(),
  verdict: v.picklist(SNAPSHOT_VERDICTS, "must be smelled, not smelled or uncertain"),
  probability: v.nullable(fraction),
  interval: v.nullable(v.looseObject({ low: fraction, high: fraction })),
  belief: v.optional(v.looseObject({ before: fraction, likelihoodRatio: finite, after: fraction })),
  set: v.array(v.picklist(["present", "absent"])),
  reasons: v.array(v.looseObject({ kind: v.string() })),
  basis: v.nullable(basisSchema),
});

/** Shape of a kept finding. Unknown keys are kept on every level. */
export const findingSnapshotSchema = v.looseObject({
  format: v.literal("nidor-finding/1", 'must be "nidor-finding/1"'),
  sniffId: v.string(),
  headspaceMs: v.pipe(finite, v.minValue(0, "must not be negative")),
  acceptedMissRate: fraction,
  groups: v.array(groupFindingSchema),
});
