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
  /** At probability one half. */
  readonly balancedAccuracy: number | null;
  /** At even evidence: *present* where the probability is above the share of present plates among those taught, that is
   * where the likelihood ratio is above 1. Best for balanced accuracy. Missing from noses of older versions. */
  readonly evenBalancedAccuracy?: number | null | undefined;
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

/** How often two noses were right on the same plates of one truth. */
export interface PairedRate {
  readonly older: Rate;
  readonly newer: Rate;
  /** Plates that only one of them got right. */
  readonly onlyOlder: number;
  readonly onlyNewer: number;
  /** Exact two-sided p-value of McNemar's test. */
  readonly p: number;
}

/** Two noses side by side on the same plates, for one group, at probability one half. */
export interface GroupComparison {
  readonly group: string;
  readonly plates: number;
  readonly olderLogLoss: number;
  readonly newerLogLoss: number;
  /** Plates with the group. */
  readonly found: PairedRate;
  /** Plates without it. */
  readonly quiet: PairedRate;
}

/** What a refresh brought, on fresh plates that the refreshed nose had not met. */
export interface RefreshReport {
  /** The nose that was brought up to date. */
  readonly of: { readonly id: string; readonly name: string };
  readonly freshPlates: number;
  /** Parts in which the fresh plates were held out in turn. */
  readonly folds: number;
  readonly gain: readonly GroupComparison[];
}

/** Sniffs that were not used, and why. */
export interface LeftOut {
  readonly why: "otherSniffer" | "otherChannels" | "noCleanAir" | "noKnownGroup" | "duplicate";
  readonly sniffs: number;
}

/** What must not tell the groups apart, because no food is in it. */
export type LeakKind =
  | "cleanAir" // the resistances before the plate: baseline and drift
  | "airReadings" // temperature, humidity and pressure: rooms and days
  | "clock"; // when the sniff was taken

/** How well one of them told one group, held out by plate. */
export interface LeakCheck {
  readonly kind: LeakKind;
  readonly group: string;
  /** Chance is 0.5. */
  readonly auc: number;
  /** Larger than this is no accident: one-sided 1 % over all checks together. */
  readonly limit: number;
  readonly leaks: boolean;
}

/** The report on confounding: samples gathered group by group let the hour or the room answer for the food. */
export interface LeakReport {
  readonly checks: readonly LeakCheck[];
  /** What could not be checked for want of data. */
  readonly missing: readonly LeakKind[];
  /** For each group, occasions on which every plate had the same truth, and all occasions: add the other truth. */
  readonly oneSided: readonly {
    readonly group: string;
    readonly occasions: readonly string[];
    readonly of: number;
  }[];
}

/** How good so many taught plates make a nose. */
export interface LearningPoint {
  readonly plates: number;
  readonly logLoss: number;
  readonly auc: number | null;
  readonly error: number;
}

/** What the samples themselves are like, whatever the nose. */
export interface SampleChecks {
  readonly leaks: LeakReport;
  readonly learningCurve: readonly LearningPoint[];
}

/** The same teaching held out by occasion: how good the nose would be on a day that it does not know. */
export interface OccasionReport {
  readonly occasions: number;
  readonly folds: number;
  /** Counted by sniff at probability one half, as in the report by plate. */
  readonly groups: readonly Pick<GroupReport, "group" | "scores" | "sensitivity" | "specificity">[];
}

export interface NoseReport {
  readonly groups: readonly GroupReport[];
  readonly rivals: readonly RivalReport[];
  readonly horizons: readonly HorizonReport[];
  readonly recipes: readonly { readonly id: number; readonly name: string; readonly logLoss: number }[];
  readonly chosen: string;
  /** How much of the humidity's part was taken out of the features, 0 to 1. Missing from noses of older versions, which
   * took out all or nothing. */
  readonly humidityShare?: number | undefined;
  readonly leftOut: readonly LeftOut[];
  /** Plain words about what the data could not give, by kind. */
  readonly notes: readonly ("noCleanAir" | "noHumidityCorrection" | "oneOccasion" | "constantChannels")[];
  readonly split: "plate" | "occasion";
  readonly folds: number;
  readonly backend: string;
  /** Missing where they were not made: noses of earlier versions, or a person who stopped them. */
  readonly sampleChecks?: SampleChecks | undefined;
  readonly byOccasion?: OccasionReport | undefined;
  /** Only where this nose was brought up to date from another. */
  readonly refresh?: RefreshReport | undefined;
}
