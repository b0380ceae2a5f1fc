import type { PlateFinding, Reason } from "../finding/finding.js";
import type { FindingSnapshot, ReasonSnapshot } from "../meals/findingSnapshot.js";

/** Reasons that this version has words for. */
const KNOWN: ReadonlySet<string> = new Set<Reason["kind"]>([
  "tooFewSweeps",
  "noCleanAir",
  "staleCleanAir",
  "cleanAirUnsteady",
  "coldHeater",
  "heaterFault",
  "wetSensor",
  "airStuck",
  "saturated",
  "sweepsLost",
  "linkLost",
  "weakSignal",
  "stillMoving",
  "noNose",
  "otherSniffer",
  "otherChannels",
  "drifted",
  "unlikeTaught",
  "groupNotTaught",
  "tooFewPlates",
  "missRateNotShown",
  "bothPossible",
  "neitherFits",
  "allergy",
]);

/** A kept finding, with each reason as one that there are words for, or as `unknown`. */
export function keptFinding(snapshot: FindingSnapshot): PlateFinding {
  return {
    ...snapshot,
    groups: snapshot.groups.map(({ belief, ...group }) => ({
      ...group,
      ...(belief === undefined ? {} : { belief }),
      reasons: group.reasons.map(toReason),
    })),
  };
}

/** The snapshot was written from a reason of this kind; only its type was loosened to be kept. */
function toReason(reason: ReasonSnapshot): Reason {
  return (KNOWN.has(reason.kind) ? reason : { kind: "unknown" }) as Reason;
}
