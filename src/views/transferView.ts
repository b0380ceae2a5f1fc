import type { TransferGain } from "../nose/nose.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";

/** A plate and which of the two sniffers sniffed it. */
export interface TransferPlate {
  readonly plate: string;
  readonly dish: string;
  readonly on: "both" | "onlyFirst" | "onlySecond";
}

/** What working it out came to. */
export type TransferOutcome =
  /** `done` is a fraction; null while the samples are read and the worker starts. */
  | { readonly kind: "working"; readonly done: number | null }
  | { readonly kind: "stopped" } // by the person
  | { readonly kind: "busy" } // a nose is being taught: wait until it is ready
  | { readonly kind: "failed" | "workerCrashed"; readonly detail: string }
  | { readonly kind: "badNose" | "storage" }
  | { readonly kind: "noNose" | "noSniffer" | "sameSniffer" | "otherChannels" | "alreadyMoved" }
  | { readonly kind: "tooFewPairs"; readonly more: number }
  | { readonly kind: "noGain"; readonly gain: TransferGain; readonly more: number | null }
  | { readonly kind: "moved"; readonly gain: TransferGain; readonly evidencePlates: number };

export interface TransferState {
  readonly noseName: string | null;
  readonly taughtOn: string | null;
  readonly connected: string | null;
  readonly plates: readonly TransferPlate[];
  /** Readings of the check jar that both took within a day, counted on the connected sniffer. */
  readonly jarReadings: number;
  readonly outcome: TransferOutcome;
}

/** The page that moves a nose to another sniffer. */
export interface TransferView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
  /** Without a title where nothing was worked out yet: the line says what is missing. */
  readonly outcome: {
    readonly title: string | null;
    readonly lines: readonly string[];
    readonly good: boolean;
  };
  readonly how: { readonly title: string; readonly steps: readonly string[] };
  readonly pairs: {
    readonly title: string;
    readonly count: string;
    readonly none: string | null;
    /** What the check jar adds; null where it was not sniffed on both. */
    readonly jar: string | null;
    readonly rows: readonly { readonly key: string; readonly dish: string; readonly on: string }[];
  };
  /** null while nothing is being worked out. */
  readonly progress: { readonly share: number; readonly text: string } | null;
  /** Three things that can be tapped, each null where it makes no sense. */
  readonly accept: string | null;
  readonly stop: string | null;
  readonly again: string | null;
}

type TransferWords = Words<"nose" | "report" | "transfer">;

/** Words of that page. */
export function transferView(state: TransferState, words: TransferWords): TransferView {
  const { transfer: text, report } = words.text;
  const { outcome } = state;
  const paired = state.plates.filter(({ on }) => on === "both").length;
  return {
    title: text.title,
    back: report.back,
    text: text.text,
    facts: [
      { label: text.nose, value: state.noseName ?? text.noNose },
      { label: text.taughtOn, value: state.taughtOn ?? text.none },
      { label: text.connected, value: state.connected ?? text.none },
    ],
    outcome: {
      title: outcome.kind === "moved" || outcome.kind === "noGain" ? text.outcomeTitle : null,
      lines: outcomeLines(outcome, words),
      good: ["moved", "working"].includes(outcome.kind),
    },
    how: { title: text.howTitle, steps: text.how },
    pairs: {
      title: text.pairsTitle,
      count: text.pairs(numberText(paired, words.formats)),
      none: state.plates.length === 0 ? text.noPairs : null,
      jar: state.jarReadings === 0 ? null : text.jar(numberText(state.jarReadings, words.formats)),
      rows: state.plates.map(({ plate, dish, on }) => ({
        key: plate,
        dish: dish === "" ? words.text.nose.samples.noDish : dish,
        on: text[on],
      })),
    },
    progress: progressOf(outcome, words),
    accept: outcome.kind === "moved" ? text.accept : null,
    stop: outcome.kind === "working" ? text.stop : null,
    again: AGAIN.includes(outcome.kind) ? text.again : null,
  };
}

/** What another try may mend. */
const AGAIN: readonly TransferOutcome["kind"][] = [
  "stopped",
  "busy",
  "failed",
  "workerCrashed",
  "badNose",
  "storage",
];

function progressOf(outcome: TransferOutcome, words: TransferWords): TransferView["progress"] {
  if (outcome.kind !== "working") return null;
  const share = outcome.done ?? 0;
  return { share, text: percentText(share, words.formats) };
}

function outcomeLines(outcome: TransferOutcome, words: TransferWords): string[] {
  const { transfer: text } = words.text;
  const whole = (value: number) => numberText(value, words.formats);
  switch (outcome.kind) {
    case "working":
      return [text.working];
    case "failed":
    case "workerCrashed":
      return [text.problems[outcome.kind](outcome.detail)];
    case "tooFewPairs":
      return [text.tooFew(whole(outcome.more))];
    case "noGain":
      return [
        text.noGain,
        ...(outcome.more === null ? [] : [text.noGainMore(whole(outcome.more))]),
        ...gainLines(outcome.gain, words),
      ];
    case "moved":
      return [...gainLines(outcome.gain, words), text.evidence(whole(outcome.evidencePlates))];
    default:
      return [text.problems[outcome.kind]];
  }
}

function gainLines({ before, after, factor, low, high }: TransferGain, words: TransferWords): string[] {
  const { transfer: text } = words.text;
  const decimals = (value: number) => numberText(value, words.formats, 2);
  return [
    text.gain(decimals(factor), decimals(low), decimals(high)),
    text.differences(decimals(before), decimals(after)),
  ];
}
