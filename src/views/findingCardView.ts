import type { Basis, GroupFinding, Reason } from "../finding/finding.js";
import type { Words } from "../text/catalogue.js";
import { agoText, numberText, percentText } from "../text/formats.js";
import { bandView, type BandView } from "./bandView.js";
import { groupName } from "./groupName.js";
import { reasonView, type ReasonView } from "./reasonView.js";
import { type Tone, toneOf } from "./tone.js";

/** The finding for one group, finished. */
export interface FindingCardView {
  readonly group: string;
  readonly name: string;
  readonly tone: Tone;
  readonly verdict: string;
  /** "do not rely on this", said with every uncertain finding. */
  readonly addition: string | null;
  readonly spoken: string;
  readonly chance: string;
  readonly interval: string | null;
  readonly band: BandView;
  readonly allergyNote: string | null;
  readonly reasons: { readonly title: string; readonly items: readonly ReasonView[] } | null;
  readonly belief: { readonly title: string; readonly text: string; readonly ratio: string } | null;
  readonly basis: {
    readonly title: string;
    readonly lines: readonly string[];
    readonly glossary: { readonly label: string; readonly href: string };
  } | null;
}

export interface FindingContext {
  readonly acceptedMissRate: number;
  readonly allergyGroups: readonly string[];
  readonly nowMs: number;
}

/** Words for one group's finding. Nothing here can turn *uncertain* into anything else. */
export function findingCardView(
  finding: GroupFinding,
  context: FindingContext,
  words: Words<"common" | "finding">,
): FindingCardView {
  const { finding: text } = words.text;
  const percent = (fraction: number) => percentText(fraction, words.formats);
  const tone = toneOf(finding.verdict);
  const name = groupName(finding.group, words);
  const verdict = text.verdicts[tone];
  const addition = tone === "uncertain" ? text.uncertainAddition : null;
  const { interval, probability, reasons } = finding;
  return {
    group: finding.group,
    name,
    tone,
    verdict,
    addition,
    spoken: text.spoken(name, addition === null ? verdict : `${verdict}, ${addition}`),
    chance: probability === null ? text.chanceNone : text.chance(percent(probability)),
    interval: interval === null ? null : text.interval(percent(interval.low), percent(interval.high)),
    band: bandView(finding, context.acceptedMissRate, words),
    allergyNote: context.allergyGroups.includes(finding.group) ? text.allergyNote : null,
    reasons:
      reasons.length === 0
        ? null
        : { title: text.reasonsTitle, items: inOrder(reasons).map((reason) => reasonView(reason, words)) },
    belief: beliefView(finding, words),
    basis: finding.basis === null ? null : basisView(finding.basis, context, words),
  };
}

/** To stay longer helps only once the rest is put right: that advice stands last. */
function inOrder(reasons: readonly Reason[]): readonly Reason[] {
  const isLast = ({ kind }: Reason) => kind === "tooFewSweeps";
  return [...reasons.filter((reason) => !isLast(reason)), ...reasons.filter(isLast)];
}

function beliefView({ belief }: GroupFinding, words: Words<"finding">): FindingCardView["belief"] {
  if (belief === undefined) return null;
  const { finding: text } = words.text;
  return {
    title: text.beliefTitle,
    text: text.belief(percentText(belief.before, words.formats), percentText(belief.after, words.formats)),
    ratio: text.likelihoodRatio(numberText(belief.likelihoodRatio, words.formats, 2)),
  };
}

function basisView(
  basis: Basis,
  { acceptedMissRate, nowMs }: FindingContext,
  words: Words<"finding">,
): FindingCardView["basis"] {
  const { basis: lines } = words.text.finding;
  const whole = (value: number) => numberText(value, words.formats);
  const percent = (fraction: number) => percentText(fraction, words.formats, 1);
  return {
    title: words.text.finding.basisTitle,
    lines: [
      lines.nose(basis.noseName, agoText(basis.taughtAt, nowMs, words.formats)),
      lines.taught(whole(basis.platesTaught)),
      lines.present(whole(basis.heldOutPresent), whole(basis.misses)),
      lines.missRate(percent(basis.missRateUpper)),
      lines.absent(whole(basis.heldOutAbsent), whole(basis.falseAlarms)),
      lines.accepted(percent(acceptedMissRate)),
    ],
    glossary: { label: words.text.finding.glossary, href: "#/you/glossary" },
  };
}
