/** How good a nose is on plates that it never saw (types only). Fractions throughout; null where undefined. */
import type { ReliabilityBin } from "../stats/reliabilityCurve.js";
import type { RiskCoveragePoint } from "../stats/riskCoverage.js";

/** A rate with what it was counted on. */
export interface Rate {
  readonly events: number;
  readonly trials: number;
  readonly low: number;
  readonly high: number;
}

/** Scores of probabilities for one group, sniff by sniff. */
export interface Scores {
  readonly sniffs: number;
  readonly balancedAccuracy: number | null;
  readonly auc: number | null;
  readonly logLoss: number;
  readonly brier: number;
  readonly ece: number;
  readonly error: number;
  /** Error among the four fifths with the most decided probabilities. */
  readonly errorAt80: number;
}

/** The findings themselves, counted by plate. */
export interface FindingCounts {
  readonly smelledPresent: number;
  readonly smelledAbsent: number;
  readonly notSmelledPresent: number;
  readonly notSmelledAbsent: number;
  readonly uncertainPresent: number;
  readonly uncertainAbsent: number;
}

export interface GroupReport {
  readonly group: string;
  readonly platesPresent: number;
  readonly platesAbsent: number;
  /** Null where there was too little to judge on. */
  readonly scores: Scores | null;
  /** At probability one half, exact 95 % intervals. */
  readonly sensitivity: Rate | null;
  readonly specificity: Rate | null;
  readonly brierParts: {
    readonly reliability: number;
    readonly resolution: number;
    readonly uncertainty: number;
  } | null;
  /** Share of held-out plates whose conformal set at 0.1 holds the truth, with the interval it should lie in. */
  readonly coverage: { readonly present: Rate; readonly absent: Rate; readonly target: number } | null;
  readonly reliability: readonly ReliabilityBin[];
  readonly riskCoverage: readonly RiskCoveragePoint[];
  readonly calibration: string;
}

/** Log loss of one kind of model on the same splits, mean over the groups. */
export interface RivalReport {
  readonly name: string;
  readonly logLoss: number;
  readonly auc: number | null;
  readonly balancedAccuracy: number | null;
}

/** What happens to the scores after each stretch of the headspace. */
export interface HorizonReport {
  readonly fromMs: number;
  readonly logLoss: number;
  readonly auc: number | null;
}

/** Sniffs that were not used, and why. */
export interface LeftOut {
  readonly why: "otherSniffer" | "otherChannels" | "noCleanAir" | "noKnownGroup" | "duplicate";
  readonly sniffs: number;
}

export interface NoseReport {
  readonly groups: readonly GroupReport[];
  readonly rivals: readonly RivalReport[];
  readonly horizons: readonly HorizonReport[];
  readonly recipes: readonly { readonly id: number; readonly name: string; readonly logLoss: number }[];
  readonly chosen: string;
  readonly leftOut: readonly LeftOut[];
  /** Plain words about what the data could not give, by kind. */
  readonly notes: readonly ("noCleanAir" | "noHumidityCorrection" | "oneOccasion" | "constantChannels")[];
  readonly split: "plate" | "occasion";
  readonly folds: number;
  readonly backend: string;
}
