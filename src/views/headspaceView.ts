import type { GroupFinding } from "../finding/finding.js";
import type { CheckState } from "../flows/checkState.js";
import type { Words } from "../text/catalogue.js";
import { numberText } from "../text/formats.js";
import { bandView, type BandView } from "./bandView.js";
import { durationText } from "./durationText.js";
import { groupName } from "./groupName.js";
import { type TraceView, traceView } from "./traceView.js";

/** Evidence for one group while the sniff still runs. It is no finding and is not worded as one. */
export interface EvidenceView {
  readonly group: string;
  readonly name: string;
  readonly lean: string;
  readonly band: BandView;
}

export interface HeadspaceView {
  readonly phase: "headspace";
  readonly title: string;
  readonly text: string;
  readonly elapsed: string;
  readonly left: string;
  /** When the answer will likely be there; null where that cannot be told, or is over. */
  readonly likely: string | null;
  readonly progressLabel: string;
  /** Share of the longest time that is over, 0 to 1. */
  readonly progress: number;
  readonly status: string;
  readonly evidenceTitle: string;
  readonly evidenceNote: string;
  readonly evidence: readonly EvidenceView[];
  readonly trace: TraceView | null;
  readonly lost: string | null;
  readonly steam: string | null;
  readonly finish: string;
}

type HeadspaceWords = Words<"common" | "check" | "finding">;

/** The plate being sniffed: time, evidence for each group, and how the channels move. */
export function headspaceView(
  state: Extract<CheckState, { phase: "headspace" }>,
  context: {
    readonly acceptedMissRate: number;
    readonly isJar: boolean;
    readonly hasAllergy: boolean;
    readonly likelyMs: number | null;
  },
  words: HeadspaceWords,
): HeadspaceView {
  const { headspace, jar } = words.text.check;
  const { acceptedMissRate, isJar, hasAllergy, likelyMs } = context;
  const { gathered, elapsedMs, live } = state;
  const limitMs = gathered.subject.headspaceLimitMs;
  return {
    phase: "headspace",
    title: isJar ? jar.title : headspace.title,
    text: isJar ? jar.headspace : headspace.text,
    elapsed: headspace.elapsed(durationText(elapsedMs, words), durationText(limitMs, words)),
    left: headspace.left(durationText(limitMs - elapsedMs, words)),
    likely: likelyText(likelyMs, elapsedMs, state.settled, words),
    progressLabel: headspace.progress,
    progress: Math.min(1, elapsedMs / limitMs),
    status: live === null ? headspace.first : state.settled ? headspace.settled : headspace.moving,
    evidenceTitle: headspace.evidence,
    evidenceNote: headspace.soFar,
    // Nobody asks what is in the jar.
    evidence: (isJar ? [] : (live?.groups ?? [])).map((group) => evidenceOf(group, acceptedMissRate, words)),
    trace: traceView(gathered, words),
    lost: gathered.sweepsLost === 0 ? null : headspace.lost(numberText(gathered.sweepsLost, words.formats)),
    steam: hasAllergy ? words.text.finding.steam : null,
    finish: headspace.finish,
  };
}

function likelyText(
  likelyMs: number | null,
  elapsedMs: number,
  settled: boolean,
  words: HeadspaceWords,
): string | null {
  if (likelyMs === null || settled) return null;
  const { headspace } = words.text.check;
  const leftMs = likelyMs - elapsedMs;
  return leftMs > 0 ? headspace.likely(durationText(leftMs, words)) : headspace.longer;
}

function evidenceOf(group: GroupFinding, acceptedMissRate: number, words: HeadspaceWords): EvidenceView {
  const { headspace } = words.text.check;
  const band = bandView(group, acceptedMissRate, words);
  const { probability } = group;
  const outside = (value: number) => value >= band.uncertainTo || value <= band.uncertainFrom;
  const lean =
    probability === null || !outside(probability)
      ? headspace.leaningNone
      : probability >= band.uncertainTo
        ? headspace.leaningThere
        : headspace.leaningNot;
  return {
    group: group.group,
    name: groupName(group.group, words),
    lean,
    band: { ...band, tone: "uncertain" },
  };
}
