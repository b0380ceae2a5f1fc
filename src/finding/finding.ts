/** What a finding may say (types only). A finding is kept in a meal as a plain copy. */

/** The outcome for one group on one plate. There is no fourth word. */
export type Verdict = "smelled" | "not smelled" | "uncertain";

/** Why a finding is uncertain. Every uncertain finding has at least one; the numbers are what the words need. */
export type Reason =
  // The sniff
  | { readonly kind: "tooFewSweeps"; readonly sweeps: number; readonly needed: number }
  | { readonly kind: "noCleanAir" } // the nose needs clean air and this sniff has none: sniff again
  | { readonly kind: "staleCleanAir"; readonly ageMs: number } // zero again in clean air
  | { readonly kind: "cleanAirUnsteady" } // the baseline never settled: move away from the kitchen's air
  | { readonly kind: "coldHeater" } // wait for the warm-up
  | { readonly kind: "heaterFault" }
  | { readonly kind: "wetSensor" } // condensation or humidity out of range: let it dry, hold it higher
  | { readonly kind: "airStuck" } // the humidity stands still or at the end of its range: let it dry, or mend it
  | { readonly kind: "saturated"; readonly channels: number } // stuck or at the end of the range
  | { readonly kind: "sweepsLost" }
  | { readonly kind: "linkLost" }
  | { readonly kind: "weakSignal"; readonly signalToNoise: number; readonly needed: number }
  | { readonly kind: "stillMoving" } // the probability has not come to rest
  // The sniff against the nose
  | { readonly kind: "noNose" }
  | { readonly kind: "otherSniffer" } // the nose was taught on another sniffer
  | { readonly kind: "otherChannels" } // another heater programme or number of sensors
  | { readonly kind: "drifted" } // the check jar says the sniffer is out of control
  | { readonly kind: "unlikeTaught"; readonly distancePValue: number }
  // The nose
  | { readonly kind: "groupNotTaught" }
  | {
      readonly kind: "tooFewPlates"; // a set cannot be formed, or the bound cannot be reached, with so few
      readonly truth: "present" | "absent";
      readonly plates: number;
      /** Best miss rate that so many plates could show; null for `absent`. */
      readonly bestShowable: number | null;
      readonly needed: number;
    }
  | {
      readonly kind: "missRateNotShown";
      readonly misses: number;
      readonly plates: number;
      readonly upper: number;
      readonly accepted: number;
    }
  | { readonly kind: "bothPossible" } // the conformal set is {present, absent}
  | { readonly kind: "neitherFits" } // the conformal set is empty
  // The person
  | { readonly kind: "allergy" }; // a nose can never clear an allergen

export type ReasonKind = Reason["kind"];

/** What a probability rests on. */
export interface Basis {
  readonly noseId: string;
  readonly noseName: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  readonly platesTaught: number;
  readonly heldOutPresent: number;
  readonly heldOutAbsent: number;
  /** Held-out present plates called *not smelled*, at the accepted miss rate of this finding. */
  readonly misses: number;
  /** One-sided 95 % Clopper-Pearson upper bound of the miss rate. */
  readonly missRateUpper: number;
  /** Held-out absent plates called *smelled*. */
  readonly falseAlarms: number;
}

/** The finding for one group. */
export interface GroupFinding {
  readonly group: string;
  readonly verdict: Verdict;
  /** Calibrated probability that the group is present, a fraction; null where none can be computed. */
  readonly probability: number | null;
  /** 95 % interval of that probability; null where none can be computed. */
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** The user's belief from before the sniff, and what it becomes with this sniff (Bayes). */
  readonly belief?: { readonly before: number; readonly likelihoodRatio: number; readonly after: number };
  /** The conformal set. */
  readonly set: readonly ("present" | "absent")[];
  readonly reasons: readonly Reason[];
  readonly basis: Basis | null;
}

/** Findings for one plate, one for each group asked for. */
export interface PlateFinding {
  readonly format: "nidor-finding/1";
  readonly sniffId: string;
  /** How long the headspace was sniffed. */
  readonly headspaceMs: number;
  readonly acceptedMissRate: number;
  readonly groups: readonly GroupFinding[];
}

/** What the person brings to a finding. */
export interface FindingRequest {
  /** Groups to answer for. */
  readonly groups: readonly string[];
  /** How often, at most, a present group may be called *not smelled*; a fraction. */
  readonly acceptedMissRate: number;
  /** Groups the person is allergic to: *not smelled* does not exist for them. */
  readonly allergyGroups: readonly string[];
  /** Beliefs from before the sniff, by group; fractions strictly between 0 and 1. */
  readonly beliefs?: Readonly<Record<string, number>>;
  /** The check jar's word on this sniffer. */
  readonly snifferInControl?: boolean;
}
