import type { GroupComparison, PairedRate, Rate } from "../nose/report.js";
import { benjaminiHochberg } from "../stats/multipleTesting.js";
import type { Words } from "../text/catalogue.js";
import { listText, numberText } from "../text/formats.js";
import { groupName } from "./groupName.js";
import { rateView } from "./rateView.js";

/** One number of the old nose beside that of the new one. */
export interface ComparedView {
  readonly label: string;
  readonly before: string;
  readonly after: string;
  readonly beforeText: string;
  readonly afterText: string;
  readonly change: string;
}

/** One line of two noses beside each other; `rates` is the old and the new, null for "not tried". */
export function comparedView(
  label: string,
  rates: readonly [Rate | null, Rate | null],
  change: string,
  words: Words<"nose">,
): ComparedView {
  const [before, after] = [rateView(label, rates[0], words), rateView(label, rates[1], words)];
  return {
    label,
    before: before.percent ?? "–",
    after: after.percent ?? "–",
    beforeText: before.text,
    afterText: after.text,
    change,
  };
}

/** Two noses on the same plates. */
export interface ComparisonView {
  /** What is better, what is worse, what cannot be told: one line each, where there is something. */
  readonly summary: readonly string[];
  readonly groups: readonly {
    readonly group: string;
    readonly name: string;
    readonly plates: string;
    readonly rows: readonly ComparedView[];
  }[];
  readonly notes: readonly string[];
}

/** The usual 5 % level; p-values are corrected for the number of lines before. */
const LEVEL = 0.05;
/** Six plates on which they differ are the fewest whose exact p can fall below that level: 2 x 0.5^6 = 0.031. */
const LEAST_TELLING = 6;
const LEAST_P = 0.001;

interface Line {
  readonly group: string;
  readonly kind: "found" | "quiet";
  readonly rate: PairedRate;
  /** Corrected for the number of lines. */
  readonly p: number;
}

type ComparisonWords = Words<"common" | "nose" | "offer">;

/** Words of a comparison; the paired test is the exact one of McNemar, corrected by Benjamini and Hochberg. */
export function comparisonView(compared: readonly GroupComparison[], words: ComparisonWords): ComparisonView {
  const lines = linesOf(compared);
  const { offer: text } = words.text;
  const most = Math.max(0, ...compared.map(({ plates }) => plates));
  return {
    summary: summaryOf(lines, words),
    groups: compared.map(({ group, plates, olderLogLoss, newerLogLoss }) => ({
      group,
      name: groupName(group, words),
      plates: text.loss(
        numberText(olderLogLoss, words.formats, 3),
        numberText(newerLogLoss, words.formats, 3),
        numberText(plates, words.formats),
      ),
      rows: lines.filter((line) => line.group === group).map((line) => rowOf(line, words)),
    })),
    notes: [...(most < 4 * LEAST_TELLING ? [text.few] : []), text.test],
  };
}

function linesOf(compared: readonly GroupComparison[]): Line[] {
  const raw = compared.flatMap(({ group, found, quiet }) => [
    ...(found.older.trials === 0 ? [] : [{ group, kind: "found" as const, rate: found }]),
    ...(quiet.older.trials === 0 ? [] : [{ group, kind: "quiet" as const, rate: quiet }]),
  ]);
  const corrected = benjaminiHochberg(raw.map(({ rate }) => rate.p));
  return raw.map((line, i) => ({ ...line, p: corrected[i] ?? 1 }));
}

function verdictOf({ rate, p }: Line): "better" | "worse" | "same" {
  if (p > LEVEL) return "same";
  return rate.onlyNewer > rate.onlyOlder ? "better" : "worse";
}

function summaryOf(lines: readonly Line[], words: ComparisonWords): string[] {
  const { offer: text, common } = words.text;
  const say = (verdict: ReturnType<typeof verdictOf>, as: (where: string) => string) => {
    const named = lines
      .filter((line) => verdictOf(line) === verdict)
      .map(({ group, kind }) => text.where[kind](common.groupInSentence(groupName(group, words))));
    return named.length === 0 ? [] : [as(listText(named, words.formats))];
  };
  return [...say("better", text.better), ...say("worse", text.worse), ...say("same", text.unclear)];
}

function rowOf(line: Line, words: ComparisonWords): ComparedView {
  const { offer: text, nose } = words.text;
  const { rate, kind, p } = line;
  const label = kind === "found" ? nose.found : nose.quiet;
  const whole = (value: number) => numberText(value, words.formats);
  const pText =
    p < LEAST_P
      ? text.pBelow(numberText(LEAST_P, words.formats, 3))
      : text.p(numberText(p, words.formats, 3));
  const change = text.change[verdictOf(line)](whole(rate.onlyNewer), whole(rate.onlyOlder), pText);
  return comparedView(label, [rate.older, rate.newer], change, words);
}
