import type { LeakKind, LeakReport, LearningPoint, NoseReport } from "../nose/report.js";
import { powerFit } from "../stats/powerFit.js";
import type { Words } from "../text/catalogue.js";
import { listText, numberText, percentText, shortDayText } from "../text/formats.js";
import { shareCurve, topText, type CurveView } from "./curveView.js";
import { groupName } from "./groupName.js";

/** What foretold a group though no food is in it; or that nothing did. */
export interface LeakRowView {
  readonly kind: LeakKind;
  readonly text: string;
  readonly detail: string;
  readonly leaks: boolean;
}

export interface LeakView {
  readonly title: string;
  readonly text: string;
  readonly rows: readonly LeakRowView[];
  /** Which occasions to add, where something leaks. */
  readonly add: { readonly title: string; readonly text: string; readonly lines: readonly string[] } | null;
  /** Why there are no checks. */
  readonly none: string | null;
}

/** How good so many plates make a nose, and what more of them would bring. */
export interface LearningView {
  readonly title: string;
  readonly curve: CurveView | null;
  readonly more: string | null;
  readonly none: string | null;
}

type ReportWords = Words<"common" | "report">;

const KINDS: readonly LeakKind[] = ["cleanAir", "airReadings", "clock"];
/** Occasions that are named; the rest is counted. */
const NAMED_OCCASIONS = 4;

/** Words of the leak checks. */
export function leakView({ sampleChecks }: NoseReport, words: ReportWords): LeakView {
  const { leak: text } = words.text.report;
  const leaks = sampleChecks?.leaks;
  if (leaks === undefined)
    return { title: text.title, text: text.text, rows: [], add: null, none: words.text.report.notChecked };
  return {
    title: text.title,
    text: text.text,
    rows: KINDS.map((kind) => leakRow(kind, leaks, words)),
    add: leaks.checks.some((check) => check.leaks) ? occasionsToAdd(leaks, words) : null,
    none: null,
  };
}

function leakRow(kind: LeakKind, { checks, missing }: LeakReport, words: ReportWords): LeakRowView {
  const { leak: text } = words.text.report;
  const what = text.kinds[kind];
  const own = checks.filter((check) => check.kind === kind);
  if (missing.includes(kind)) return { kind, text: text.missing(what), detail: "", leaks: false };
  if (own.length === 0) return { kind, text: text.tooFew(what), detail: "", leaks: false };
  const decimals = (value: number) => numberText(value, words.formats, 2);
  const told = own.filter((check) => check.leaks);
  const most = own.reduce((highest, check) => (check.auc > highest.auc ? check : highest));
  if (told.length === 0)
    return { kind, text: text.holds(what), detail: text.highest(decimals(most.auc)), leaks: false };
  const groups = told.map(({ group }) => words.text.common.groupInSentence(groupName(group, words)));
  return {
    kind,
    text: text.found(what, listText(groups, words.formats)),
    detail: told
      .map(({ group, auc, limit }) => text.auc(groupName(group, words), decimals(auc), decimals(limit)))
      .join("; "),
    leaks: true,
  };
}

function occasionsToAdd({ oneSided }: LeakReport, words: ReportWords): LeakView["add"] {
  const { leak: text } = words.text.report;
  const whole = (value: number) => numberText(value, words.formats);
  const lines = oneSided
    .filter(({ occasions }) => occasions.length > 0)
    .map(({ group, occasions, of }) => {
      const rest = occasions.length - NAMED_OCCASIONS;
      const shown = occasions.slice(0, NAMED_OCCASIONS).map((name) => occasionText(name, words));
      const named = [...shown, ...(rest > 0 ? [text.others(whole(rest))] : [])];
      return text.oneSided(
        groupName(group, words),
        whole(occasions.length),
        whole(of),
        listText(named, words.formats),
      );
    });
  return { title: text.addTitle, text: text.addText, lines: lines.length === 0 ? [text.addAny] : lines };
}

/** The app names an occasion by its day; a file from elsewhere may name it as it likes. */
function occasionText(occasion: string, { formats }: ReportWords): string {
  const day = /^\d{4}-\d{2}-\d{2}$/u.test(occasion) && !Number.isNaN(Date.parse(occasion));
  return day ? shortDayText(occasion, { ...formats, timeZone: "UTC" }) : occasion;
}

/** Words of the learning curve. */
export function learningView({ sampleChecks }: NoseReport, words: ReportWords): LearningView {
  const { learning: text, notChecked } = words.text.report;
  const points = sampleChecks?.learningCurve ?? [];
  const last = points.at(-1);
  if (last === undefined) return { title: text.title, curve: null, more: null, none: notChecked };
  const whole = (value: number) => numberText(value, words.formats);
  const { points: line, top } = shareCurve(
    points.map(({ plates, error }) => ({ across: plates, share: error })),
    last.plates,
  );
  return {
    title: text.title,
    none: null,
    curve: {
      title: text.title,
      caption: text.text,
      across: text.across(whole(last.plates)),
      up: topText(text.up, top, words.formats),
      points: line,
      rows: points.map(({ plates, error, logLoss }) =>
        text.row(whole(plates), percentText(error, words.formats), numberText(logLoss, words.formats, 3)),
      ),
    },
    more: moreText(points, words),
  };
}

/** What twice the plates would bring if the curve went on as a power law; null for fewer than two sizes. */
function moreText(points: readonly LearningPoint[], words: ReportWords): string | null {
  const { learning: text } = words.text.report;
  const usable = points.filter(({ plates, logLoss }) => plates > 0 && logLoss > 0);
  if (new Set(usable.map(({ plates }) => plates)).size < 2) return null;
  const { exponent } = powerFit(
    usable.map(({ plates }) => plates),
    usable.map(({ logLoss }) => logLoss),
  );
  if (exponent >= 0) return text.moreNothing;
  const twice = 2 * (points.at(-1)?.plates ?? 0);
  return text.more(numberText(twice, words.formats), percentText(1 - 2 ** exponent, words.formats));
}
