import { kindsInUse } from "../nose/kindsInUse.js";
import type { Nose } from "../nose/nose.js";
import type { GroupReport, OccasionReport, Rate } from "../nose/report.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";
import { shareCurve, topText, type CurveView } from "./curveView.js";
import { durationText } from "./durationText.js";
import { groupName } from "./groupName.js";
import { rateView, type RateView } from "./rateView.js";
import { leakView, learningView, type LeakView, type LearningView } from "./sampleChecksView.js";
import { reliabilityChart, type ReliabilityChartView } from "./reliabilityChart.js";

export interface ConfusionView {
  readonly caption: string;
  readonly truth: string;
  readonly columns: readonly string[];
  readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
}

export interface ReportGroupView {
  readonly group: string;
  readonly name: string;
  /** null where there was too little to judge on; `none` then says so. */
  readonly confusion: ConfusionView | null;
  readonly none: string;
  readonly rates: readonly RateView[];
  readonly reliability: { readonly title: string; readonly chart: ReliabilityChartView } | null;
  readonly risk: CurveView | null;
  readonly coverage: {
    readonly title: string;
    readonly text: string;
    readonly rates: readonly RateView[];
  } | null;
  /** The same on days that the nose does not know; null where that was not tried. */
  readonly occasion: {
    readonly title: string;
    readonly text: string;
    readonly rates: readonly RateView[];
    readonly loss: string | null;
  } | null;
  readonly scores: readonly { readonly label: string; readonly value: string }[];
  readonly notes: readonly string[];
}

/** The full report on a nose. */
export interface NoseReportView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly groups: readonly ReportGroupView[];
  readonly scoresTitle: string;
  readonly confusionTitle: string;
  readonly rivals: {
    readonly title: string;
    readonly text: string;
    readonly columns: readonly string[];
    readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
  };
  readonly horizons: {
    readonly title: string;
    readonly rows: readonly { readonly label: string; readonly value: string }[];
  };
  readonly leak: LeakView;
  readonly learning: LearningView;
  /** Why nothing was tried by occasion; null where it was. */
  readonly occasionNone: string | null;
  readonly leftOut: { readonly title: string; readonly lines: readonly string[] } | null;
}

/** Risk-coverage points that are put into sentences. */
const RISK_ROWS = [1, 0.8, 0.6, 0.4];

type ReportWords = Words<"common" | "nose" | "report">;

/** Words of the report. */
export function noseReportView(nose: Nose, words: ReportWords): NoseReportView {
  const { report: text } = words.text;
  const { report } = nose;
  return {
    title: text.title,
    back: text.back,
    text: text.text(text.splits[report.split], numberText(report.folds, words.formats)),
    groups: report.groups.map((group) => groupOf(group, report.byOccasion, words)),
    scoresTitle: text.scoresTitle,
    confusionTitle: text.confusionTitle,
    rivals: rivalsOf(nose, words),
    horizons: {
      title: text.horizonsTitle,
      rows: report.horizons.map(({ fromMs, logLoss }) => ({
        label: text.horizon(durationText(fromMs, words)),
        value: `${text.scores.logLoss} ${numberText(logLoss, words.formats, 3)}`,
      })),
    },
    leak: leakView(report, words),
    learning: learningView(report, words),
    occasionNone: report.byOccasion === undefined ? occasionNone(nose, words) : null,
    leftOut:
      report.leftOut.length === 0
        ? null
        : {
            title: text.leftOutTitle,
            lines: report.leftOut.map(({ why, sniffs }) =>
              text.leftOut[why](numberText(sniffs, words.formats)),
            ),
          },
  };
}

function groupOf(
  group: GroupReport,
  byOccasion: OccasionReport | undefined,
  words: ReportWords,
): ReportGroupView {
  const { report: text, nose } = words.text;
  const decimals = (value: number) => numberText(value, words.formats, 3);
  const { brierParts, reliability, coverage } = group;
  return {
    group: group.group,
    name: groupName(group.group, words),
    confusion: confusionOf(group.sensitivity, group.specificity, words),
    none: text.none,
    rates: [rateView(nose.found, group.sensitivity, words), rateView(nose.quiet, group.specificity, words)],
    reliability:
      reliability.length === 0
        ? null
        : {
            title: text.reliabilityTitle,
            chart: reliabilityChart(
              {
                caption: text.reliabilityText,
                called: text.called,
                cameTrue: text.cameTrue,
                row: text.reliabilityRow,
              },
              reliability,
              words.formats,
            ),
          },
    risk: riskOf(group, words),
    coverage:
      coverage === null
        ? null
        : {
            title: text.coverageTitle,
            text: text.coverageText(percentText(coverage.target, words.formats)),
            rates: [
              rateView(text.coveragePresent, coverage.present, words),
              rateView(text.coverageAbsent, coverage.absent, words),
            ],
          },
    occasion: occasionOf(group, byOccasion, words),
    scores: scoresOf(group, words),
    notes: [
      ...(brierParts === null
        ? []
        : [
            text.brierParts(
              decimals(brierParts.reliability),
              decimals(brierParts.resolution),
              decimals(brierParts.uncertainty),
            ),
          ]),
      text.calibration(group.calibration),
    ],
  };
}

function confusionOf(
  sensitivity: Rate | null,
  specificity: Rate | null,
  words: ReportWords,
): ConfusionView | null {
  if (sensitivity === null || specificity === null) return null;
  const { confusion: text } = words.text.report;
  const whole = (value: number) => numberText(value, words.formats);
  const missed = sensitivity.trials - sensitivity.events;
  const alarms = specificity.trials - specificity.events;
  return {
    caption: text.caption,
    truth: text.truth,
    columns: [text.calledThere, text.calledNot],
    rows: [
      { label: text.there, cells: [whole(sensitivity.events), whole(missed)] },
      { label: text.notThere, cells: [whole(alarms), whole(specificity.events)] },
    ],
  };
}

function riskOf({ riskCoverage }: GroupReport, words: ReportWords): CurveView | null {
  if (riskCoverage.length === 0) return null;
  const { report: text } = words.text;
  const percent = (fraction: number) => percentText(fraction, words.formats);
  const { points, top } = shareCurve(
    riskCoverage.map(({ coverage, risk }) => ({ across: coverage, share: risk })),
    1,
  );
  const atLeast = (coverage: number) =>
    riskCoverage.reduce((best, point) =>
      Math.abs(point.coverage - coverage) < Math.abs(best.coverage - coverage) ? point : best,
    );
  return {
    title: text.riskTitle,
    caption: text.riskText,
    across: text.riskAcross,
    up: topText(text.riskUp, top, words.formats),
    points,
    rows: [...new Set(RISK_ROWS.map(atLeast))].map(({ coverage, risk }) =>
      text.riskRow(percent(coverage), percent(risk)),
    ),
  };
}

function occasionOf(
  group: GroupReport,
  byOccasion: OccasionReport | undefined,
  words: ReportWords,
): ReportGroupView["occasion"] {
  const { report: text, nose } = words.text;
  const own = byOccasion?.groups.find((one) => one.group === group.group);
  if (byOccasion === undefined || own === undefined || own.scores === null) return null;
  const decimals = (value: number) => numberText(value, words.formats, 3);
  return {
    title: text.occasion.title,
    text: text.occasion.text(numberText(byOccasion.occasions, words.formats)),
    rates: [rateView(nose.found, own.sensitivity, words), rateView(nose.quiet, own.specificity, words)],
    loss:
      group.scores === null
        ? null
        : text.occasion.loss(decimals(group.scores.logLoss), decimals(own.scores.logLoss)),
  };
}

function occasionNone(nose: Nose, words: ReportWords): string | null {
  const { report: text } = words.text;
  if (nose.report.split === "occasion") return null;
  return nose.occasionsTaught < 2 ? text.occasion.one : text.occasion.none;
}

function scoresOf({ scores }: GroupReport, words: ReportWords): ReportGroupView["scores"] {
  if (scores === null) return [];
  const { scores: labels } = words.text.report;
  const value = (score: number | null) => (score === null ? "–" : numberText(score, words.formats, 3));
  return (["auc", "balancedAccuracy", "brier", "logLoss", "ece"] as const).map((key) => ({
    label: labels[key],
    value: value(scores[key]),
  }));
}

function rivalsOf({ report, ...own }: Nose, words: ReportWords): NoseReportView["rivals"] {
  const { report: text, nose } = words.text;
  const value = (score: number | null) => (score === null ? "–" : numberText(score, words.formats, 3));
  const used: readonly string[] = [...kindsInUse(own), report.chosen];
  return {
    title: text.rivalsTitle,
    text: text.rivalsText,
    columns: [text.rival, text.scores.logLoss, text.rivalAuc, text.rivalAccuracy],
    rows: report.rivals.map(({ name, logLoss, auc, balancedAccuracy }) => {
      const label = nose.models[name] ?? name;
      return {
        label: used.includes(name) ? `${label} (${text.rivalChosen})` : label,
        cells: [value(logLoss), value(auc), value(balancedAccuracy)],
      };
    }),
  };
}
