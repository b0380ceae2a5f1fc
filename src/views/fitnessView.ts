import { fitness } from "../flows/fitness.js";
import type { ConnectedSniffer, SnifferState } from "../flows/snifferState.js";
import type { Words } from "../text/catalogue.js";
import { dayAndTimeText, numberText } from "../text/formats.js";
import { fitnessItems, type FitnessItemView } from "./fitnessItems.js";

interface Part {
  readonly title: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
}

/** The sniffer's fitness: state, identity, link, check jar. */
export interface FitnessView {
  readonly title: string;
  readonly back: string;
  readonly empty: { readonly title: string; readonly text: string } | null;
  /** Each item with a sentence, and what to do where something is to be done. */
  readonly items: readonly FitnessItemView[];
  readonly parts: readonly Part[];
  readonly jar: {
    readonly title: string;
    readonly text: string;
    readonly word: string;
    readonly rows: readonly string[];
    readonly chart: {
      readonly caption: string;
      readonly points: string;
      readonly limitY: number | null;
    } | null;
    readonly sniff: string;
  };
}

/** What the check jar has shown of this sniffer. */
export interface CheckJarState {
  /** Oldest first. */
  readonly readings: readonly { readonly at: string; readonly score: number }[];
  /** null: too few readings to tell. */
  readonly inControl: boolean | null;
  readonly limit: number | null;
}

export interface FitnessState {
  readonly sniffer: SnifferState;
  /** ISO 8601 instant of the last steady clean air; null if there was none. */
  readonly cleanAirAt: string | null;
  readonly jar: CheckJarState;
  readonly nowMs: number;
}

/** Readings that are put into words. */
const JAR_ROWS = 6;

type FitnessWords = Words<"common" | "sniffer" | "report">;

/** Words of the fitness page. */
export function fitnessView(state: FitnessState, words: FitnessWords): FitnessView {
  const { fitness: text } = words.text.report;
  const { sniffer: current } = state;
  const sniffer = current.kind === "ready" || current.kind === "lost" ? current.sniffer : null;
  return {
    title: text.title,
    back: words.text.report.back,
    empty: sniffer === null ? { title: text.noneTitle, text: text.noneText } : null,
    items: sniffer === null ? [] : fitnessItems(fitness(sniffer, ageOf(state)), words),
    parts: sniffer === null ? [] : [linkOf(sniffer, words), identityOf(sniffer, words)],
    jar: jarOf(state.jar, words),
  };
}

const ageOf = ({ cleanAirAt, nowMs }: FitnessState) =>
  cleanAirAt === null ? null : Math.max(0, nowMs - Date.parse(cleanAirAt));

function linkOf({ health }: ConnectedSniffer, words: FitnessWords): Part {
  const { fitness: text } = words.text.report;
  const whole = (value: number) => numberText(value, words.formats);
  return {
    title: text.linkTitle,
    facts: [
      { label: text.sweeps, value: whole(health.sweeps) },
      { label: text.framesLost, value: whole(health.framesLost) },
      { label: text.corrupt, value: whole(health.corruptFrames) },
      { label: text.restarts, value: whole(health.restarts) },
      { label: text.badReadings, value: whole(health.badReadings) },
    ],
  };
}

function identityOf({ maker, model, firmware, layout }: ConnectedSniffer, words: FitnessWords): Part {
  const { fitness: text } = words.text.report;
  const named = [
    { label: text.maker, value: maker },
    { label: text.model, value: model },
    { label: text.firmware, value: firmware },
    // By fours: easier to compare with what stands elsewhere, and a narrow screen breaks it between them.
    { label: text.id, value: layout.snifferId.replace(/.{4}(?=.)/gu, "$& ") },
    { label: text.channels, value: numberText(layout.channels.length, words.formats) },
    { label: text.period, value: text.seconds(numberText(layout.sweepPeriodMs / 1000, words.formats, 1)) },
  ];
  return {
    title: text.identityTitle,
    facts: named.flatMap(({ label, value }) => (value === null ? [] : [{ label, value }])),
  };
}

function jarOf({ readings, inControl, limit }: CheckJarState, words: FitnessWords): FitnessView["jar"] {
  const { fitness: text } = words.text.report;
  const word = inControl === null ? text.jarUnknown : inControl ? text.jarIn : text.jarOut;
  const top = Math.max(limit ?? 0, ...readings.map(({ score }) => score), 1e-9) * 1.1;
  const step = 100 / Math.max(1, readings.length - 1);
  return {
    title: text.jarTitle,
    text: text.jarText,
    word: readings.length === 0 ? text.jarNone : word,
    rows: readings
      .slice(-JAR_ROWS)
      .reverse()
      .map(({ at, score }) =>
        text.jarRow(dayAndTimeText(at, words.formats), numberText(score, words.formats, 2)),
      ),
    chart:
      readings.length < 2
        ? null
        : {
            caption: text.jarChart,
            points: readings
              .map(({ score }, i) => `${(i * step).toFixed(1)},${(100 - (100 * score) / top).toFixed(1)}`)
              .join(" "),
            limitY: limit === null ? null : 100 - (100 * limit) / top,
          },
    sniff: text.jarSniff,
  };
}
