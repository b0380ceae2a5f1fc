import type { Nose } from "../nose/nose.js";
import type { GroupReport, NoseReport, Rate } from "../nose/report.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";
import { durationText } from "./durationText.js";
import { groupName } from "./groupName.js";
import { rateView, type RateView } from "./rateView.js";
import { reliabilityChart, type ReliabilityChartView } from "./reliabilityChart.js";

/** A line on a field of 100 by 100, and the same as sentences. */
export interface CurveView {
  readonly title: string;
  readonly caption: string;
  readonly across: string;
  readonly up: string;
  readonly points: string;
  readonly rows: readonly string[];
}

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
  readonly leak: {
    readonly title: string;
    readonly text: string;
    readonly rows: readonly { readonly text: string; readonly detail: string; readonly leaks: boolean }[];
    readonly none: string | null;
  };
  readonly leftOut: { readonly title: string; readonly lines: readonly string[] } | null;
}

/** How well the clean-air part alone foretells one group; it must not. */
export interface LeakCheck {
  readonly group: string;
  readonly auc: number;
  readonly low: number;
  readonly high: number;
}

/** Risk-coverage points that are put into sentences. */
const RISK_ROWS = [1, 0.8, 0.6, 0.4];

type ReportWords = Words<"common" | "nose" | "report">;

/** Words of the report. `leaks` is null where the check was not made for this nose. */
export function noseReportView(
  nose: Nose,
  leaks: readonly LeakCheck[] | null,
  words: ReportWords,
): NoseReportView {
  const { report: text } = words.text;
  const { report } = nose;
  return {
    title: text.title,
    back: text.back,
    text: text.text(text.splits[report.split], numberText(report.folds, words.formats)),
    groups: report.groups.map((group) => groupOf(group, words)),
    scoresTitle: text.scoresTitle,
    confusionTitle: text.confusionTitle,
    rivals: rivalsOf(report, words),
    horizons: {
      title: text.horizonsTitle,
      rows: report.horizons.map(({ fromMs, logLoss }) => ({
        label: text.horizon(durationText(fromMs, words)),
        value: `${text.scores.logLoss} ${numberText(logLoss, words.formats, 3)}`,
      })),
    },
    leak: leakOf(leaks, words),
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

function groupOf(group: GroupReport, words: ReportWords): ReportGroupView {
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
  const atLeast = (coverage: number) =>
    riskCoverage.reduce((best, point) =>
      Math.abs(point.coverage - coverage) < Math.abs(best.coverage - coverage) ? point : best,
    );
  return {
    title: text.riskTitle,
    caption: text.riskText,
    across: text.riskAcross,
    up: text.riskUp,
    points: riskCoverage
      .map(({ coverage, risk }) => `${(100 * coverage).toFixed(1)},${(100 * (1 - risk)).toFixed(1)}`)
      .join(" "),
    rows: [...new Set(RISK_ROWS.map(atLeast))].map(({ coverage, risk }) =>
      text.riskRow(percent(coverage), percent(risk)),
    ),
  };
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

function rivalsOf(report: NoseReport, words: ReportWords): NoseReportView["rivals"] {
  const { report: text, nose } = words.text;
  const value = (score: number | null) => (score === null ? "–" : numberText(score, words.formats, 3));
  return {
    title: text.rivalsTitle,
    text: text.rivalsText,
    columns: [text.rival, text.scores.logLoss, text.scores.auc],
    rows: report.rivals.map(({ name, logLoss, auc }) => {
      const label = nose.models[name] ?? name;
      return {
        label: name === report.chosen ? `${label} (${text.rivalChosen})` : label,
        cells: [value(logLoss), value(auc)],
      };
    }),
  };
}

/** Clean air tells something only where the whole interval lies above chance. */
function leakOf(leaks: readonly LeakCheck[] | null, words: ReportWords): NoseReportView["leak"] {
  const { report: text } = words.text;
  const decimals = (value: number) => numberText(value, words.formats, 2);
  return {
    title: text.leakTitle,
    text: text.leakText,
    none: leaks === null ? text.leakNone : null,
    rows: (leaks ?? []).map(({ group, auc, low, high }) => {
      const found = low > 0.5;
      const name = groupName(group, words);
      return {
        text: found ? text.leakFound(name) : text.leakHolds(name),
        detail: text.leakAuc(decimals(auc), decimals(low), decimals(high)),
        leaks: found,
      };
    }),
  };
}
