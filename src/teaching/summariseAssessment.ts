import type { JudgedSniff } from "../finding/judgedSniff.js";
import type { Label } from "../finding/groupJudge.js";
import { MODEL_KINDS } from "../nose/models.js";
import type { FindingCounts, Rate, Scores } from "../nose/report.js";
import type { Assessment } from "./assessSamples.js";
import { rateOf, scoreGroup } from "./scoreGroup.js";

/** One group of an assessment. */
export interface AssessedGroupSummary {
  readonly group: string;
  readonly platesPresent: number;
  readonly platesAbsent: number;
  readonly scores: Scores | null;
  readonly sensitivity: Rate;
  readonly specificity: Rate;
  /** Findings, counted by sniff. */
  readonly findings: FindingCounts;
  /** Share of wrong ones among the findings that are not uncertain. */
  readonly wrongWhenSaid: Rate;
  /** Share of the conformal sets that hold the truth, by truth. */
  readonly coverage: { readonly present: Rate; readonly absent: Rate };
}

/** Mean of the scores over the groups that have them. */
export type MeanScores = Omit<Scores, "sniffs">;

export interface AssessmentSummary {
  readonly groups: readonly AssessedGroupSummary[];
  readonly mean: MeanScores | null;
  readonly rivals: readonly { readonly name: string; readonly mean: MeanScores }[];
  readonly wrongWhenSaid: Rate;
  readonly said: Rate;
  /** How often each reason stood behind an uncertain finding. */
  readonly reasons: Readonly<Record<string, number>>;
}

/** Turns held-out answers into the numbers of the report. */
export function summariseAssessment(assessment: Assessment): AssessmentSummary {
  const { prepared, sniffs } = assessment;
  const groups = prepared.groups.map((group) => groupSummary(assessment, group));
  const rivals = MODEL_KINDS.flatMap((name) => {
    const scored = prepared.groups.map((_, place) => {
      const probability = (row: number) => assessment.rivals[name]?.[row]?.[place] ?? null;
      return scoresWhere(assessment, prepared.groups[place]!, probability);
    });
    const mean = meanScores(scored);
    return mean === null ? [] : [{ name, mean }];
  });
  const reasons: Record<string, number> = {};
  for (const sniff of sniffs)
    for (const one of Object.values(sniff.groups))
      for (const kind of one.finding === "uncertain" ? one.reasons : [])
        reasons[kind] = (reasons[kind] ?? 0) + 1;
  const sum = (count: (one: AssessedGroupSummary) => number) =>
    groups.reduce((all, one) => all + count(one), 0);
  const said = sum(({ wrongWhenSaid }) => wrongWhenSaid.trials);
  return {
    groups,
    mean: meanScores(groups.map(({ scores }) => scores)),
    rivals,
    wrongWhenSaid: rateOf(
      sum(({ wrongWhenSaid }) => wrongWhenSaid.events),
      said,
    ),
    said: rateOf(
      said,
      sum(({ findings }) => total(findings)),
    ),
    reasons,
  };
}

function groupSummary(assessment: Assessment, group: string): AssessedGroupSummary {
  const { sniffs } = assessment;
  const known = sniffs.filter((sniff) => truthOf(sniff, group) !== "unknown");
  const plates = (truth: Label) =>
    new Set(known.filter((sniff) => truthOf(sniff, group) === truth).map(({ plate }) => plate)).size;
  const called = (truth: Label, test: (sniff: JudgedSniff) => boolean) => {
    const of = known.filter((sniff) => truthOf(sniff, group) === truth);
    return rateOf(of.filter(test).length, of.length);
  };
  const isCalledPresent = (sniff: JudgedSniff) => (sniff.groups[group]?.probability ?? 0) >= 0.5;
  const findings = findingCounts(known, group);
  return {
    group,
    platesPresent: plates("present"),
    platesAbsent: plates("absent"),
    scores: scoresWhere(assessment, group, (row) => sniffs[row]?.groups[group]?.probability ?? null),
    sensitivity: called("present", isCalledPresent),
    specificity: called("absent", (sniff) => !isCalledPresent(sniff)),
    findings,
    wrongWhenSaid: rateOf(
      findings.smelledAbsent + findings.notSmelledPresent,
      total(findings) - findings.uncertainAbsent - findings.uncertainPresent,
    ),
    coverage: {
      present: called("present", (sniff) => sniff.groups[group]?.set.includes("present") ?? false),
      absent: called("absent", (sniff) => sniff.groups[group]?.set.includes("absent") ?? false),
    },
  };
}

function truthOf(sniff: JudgedSniff, group: string): Label | "unknown" {
  return sniff.groups[group]?.truth ?? "unknown";
}

function findingCounts(sniffs: readonly JudgedSniff[], group: string): FindingCounts {
  const count = (truth: Label, verdict: string) =>
    sniffs.filter((sniff) => truthOf(sniff, group) === truth && sniff.groups[group]?.finding === verdict)
      .length;
  return {
    smelledPresent: count("present", "smelled"),
    smelledAbsent: count("absent", "smelled"),
    notSmelledPresent: count("present", "not smelled"),
    notSmelledAbsent: count("absent", "not smelled"),
    uncertainPresent: count("present", "uncertain"),
    uncertainAbsent: count("absent", "uncertain"),
  };
}

function total(counts: FindingCounts): number {
  return Object.values(counts).reduce((sum: number, one: number) => sum + one, 0);
}

function scoresWhere(
  assessment: Assessment,
  group: string,
  probability: (row: number) => number | null,
): Scores | null {
  const place = assessment.prepared.groups.indexOf(group);
  const p: number[] = [];
  const truth: number[] = [];
  const shares: number[] = [];
  assessment.sniffs.forEach((sniff, row) => {
    const known = truthOf(sniff, group);
    const said = probability(row);
    if (known === "unknown" || said === null) return;
    p.push(said);
    truth.push(known === "present" ? 1 : 0);
    shares.push(assessment.taughtShares[row]?.[place] ?? 0.5);
  });
  return p.length === 0 ? null : scoreGroup(p, truth, shares);
}

function meanScores(each: readonly (Scores | null)[]): MeanScores | null {
  const known = each.filter((one) => one !== null);
  if (known.length === 0) return null;
  const mean = (value: (one: Scores) => number) =>
    known.reduce((sum, one) => sum + value(one), 0) / known.length;
  const meanOfKnown = (value: (one: Scores) => number | null) => {
    const values = known.map(value).filter((one) => one !== null);
    return values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length;
  };
  return {
    balancedAccuracy: meanOfKnown(({ balancedAccuracy }) => balancedAccuracy),
    evenBalancedAccuracy: meanOfKnown(({ evenBalancedAccuracy }) => evenBalancedAccuracy ?? null),
    auc: meanOfKnown(({ auc }) => auc),
    logLoss: mean(({ logLoss }) => logLoss),
    brier: mean(({ brier }) => brier),
    ece: mean(({ ece }) => ece),
    error: mean(({ error }) => error),
    errorAt80: mean(({ errorAt80 }) => errorAt80),
  };
}
