import { statable, type Statable } from "../finding/statable.js";
import type { TeachState } from "../flows/teachState.js";
import type { Nose } from "../nose/nose.js";
import type { GroupComparison, GroupReport, Rate } from "../nose/report.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { type ComparedView, comparedView, comparisonView, type ComparisonView } from "./comparisonView.js";
import { groupName, groupsInSentence } from "./groupName.js";

/** A nose that awaits the person's word, beside the one in use. */
export interface OfferView extends ComparisonView {
  readonly kind: "proposed";
  readonly proposedTitle: string;
  /** On what the two were tried. */
  readonly proposedText: string;
  /** It was taught on another sniffer than the one connected. */
  readonly suits: string | null;
  /** What the nose in use can say and this one cannot: one line each, where there is something. */
  readonly loses: readonly string[];
  readonly before: string;
  readonly after: string;
  readonly accept: string;
  readonly reject: string;
  readonly kept: string;
}

export type OfferWords = Words<"common" | "nose" | "offer">;

type Proposed = Extract<TeachState, { kind: "proposed" }>;

/**
 * Words of an offer. A refresh shows its gain on fresh plates; others are compared on the same plates, and where there
 * are none each stands with its own report.
 *
 * @param connected - id of the connected sniffer; null if none is
 * @param acceptedMissRate - fraction
 */
export function offerView(
  state: Proposed,
  connected: string | null,
  acceptedMissRate: number,
  words: OfferWords,
): OfferView {
  const { offer: text } = words.text;
  const { teach } = words.text.nose;
  const { nose, before, source } = state;
  const labels = {
    kind: "proposed",
    proposedTitle: text.heading[source],
    suits: connected === null || connected === nose.sniffer.id ? null : text.suits,
    loses: before === null ? [] : losesOf(before, nose, acceptedMissRate, words),
    before: before === null ? teach.noBefore : `${teach.before}: ${before.name}`,
    after: `${teach.after}: ${nose.name}`,
    accept: acceptText(source, words),
    reject: source === "version" ? text.rejectVersion : before === null ? teach.rejectFirst : teach.reject,
    kept: source === "version" ? text.keptVersion : teach.kept,
  } as const;
  const { refresh } = nose.report;
  const whole = (value: number) => numberText(value, words.formats);
  if (source === "refreshed" && refresh !== undefined)
    return {
      ...labels,
      proposedText: text.sameFresh(whole(refresh.freshPlates), whole(refresh.folds)),
      ...comparisonView(refresh.gain, words),
    };
  if (state.compared.length > 0)
    return {
      ...labels,
      proposedText: (source === "moved" ? text.sameMoved : text.same)(whole(mostPlates(state.compared))),
      ...comparisonView(state.compared, words),
    };
  return {
    ...labels,
    proposedText: before === null ? text.alone : text.apart,
    summary: [],
    groups: nose.report.groups.map((group) => ownGroup(group, before, words)),
    notes: [],
  };
}

function losesOf(before: Nose, nose: Nose, acceptedMissRate: number, words: OfferWords): string[] {
  const { offer: text } = words.text;
  const [had, has] = [statable(before, acceptedMissRate), statable(nose, acceptedMissRate)];
  const say = (verdict: keyof Statable, as: (groups: string) => string) => {
    const lost = had[verdict].filter((group) => !has[verdict].includes(group));
    return lost.length === 0 ? [] : [as(groupsInSentence(lost, words))];
  };
  return [...say("smelled", text.losesSmelled), ...say("notSmelled", text.losesNotSmelled)];
}

const mostPlates = (compared: readonly GroupComparison[]) =>
  Math.max(...compared.map(({ plates }) => plates));

function acceptText(source: Proposed["source"], words: OfferWords): string {
  const { offer: text, nose } = words.text;
  if (source === "version") return text.acceptVersion;
  return source === "file" || source === "moved" ? text.acceptFile : nose.teach.accept;
}

function ownGroup(
  group: GroupReport,
  before: Nose | null,
  words: OfferWords,
): ComparisonView["groups"][number] {
  const { nose: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  const old = before?.report.groups.find((one) => one.group === group.group);
  return {
    group: group.group,
    name: groupName(group.group, words),
    plates: text.platesOf(whole(group.platesPresent), whole(group.platesAbsent)),
    rows: [
      ownRow(text.found, old?.sensitivity ?? null, group.sensitivity, words),
      ownRow(text.quiet, old?.specificity ?? null, group.specificity, words),
    ],
  };
}

function ownRow(label: string, before: Rate | null, after: Rate | null, words: OfferWords): ComparedView {
  const { change } = words.text.nose.teach;
  return comparedView(label, [before, after], change[changeOf(before, after)], words);
}

/** Better or worse only where the exact intervals do not overlap. */
function changeOf(before: Rate | null, after: Rate | null): "better" | "worse" | "same" | "new" {
  if (before === null || after === null) return "new";
  if (after.low > before.high) return "better";
  return after.high < before.low ? "worse" : "same";
}
