import {
  TRACE_WINDOWS_MS,
  type TraceRing,
  type TraceWindow,
  type TraceWindowMs,
} from "../sniff/traceRing.js";
import type { SnifferState } from "../flows/snifferState.js";
import type { Channel } from "../kernel/channel.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText, unitText } from "../text/formats.js";
import { durationText } from "./durationText.js";
import type { OptionView } from "./plateHomeView.js";
import { snifferView, type SnifferContext, type SnifferView } from "./snifferView.js";
import { traceScale, type TraceScale } from "./traceScale.js";

export { TRACE_BUCKETS, type TraceWindow } from "../sniff/traceRing.js";

/** The channels as they move now: what stands around the chart, and the same in numbers. */
export interface LiveView {
  readonly title: string;
  readonly back: string;
  readonly text: string;
  readonly sniffer: SnifferView;
  readonly windows: { readonly label: string; readonly options: readonly OptionView[] };
  readonly chart: {
    readonly label: string;
    readonly top: string;
    readonly bottom: string;
    readonly from: string;
    readonly to: string;
  } | null;
  /** Why there is no chart yet. */
  readonly empty: string | null;
  readonly table: {
    readonly caption: string;
    readonly columns: readonly string[];
    readonly rows: readonly { readonly label: string; readonly cells: readonly string[] }[];
  };
  /** null where there is no sniffer to listen to. */
  readonly listen: { readonly label: string; readonly on: boolean } | null;
}

export interface LiveState extends SnifferContext {
  readonly sniffer: SnifferState;
  readonly channels: readonly Channel[];
  readonly ring: TraceRing | null;
  readonly windowMs: TraceWindowMs;
}

type LiveWords = Words<"common" | "sniffer" | "nose">;

/** Words of the page of live traces. */
export function liveView(state: LiveState, words: LiveWords): LiveView {
  const { live: text } = words.text.nose;
  const { sniffer, ring, windowMs } = state;
  const window = ring?.windows.get(windowMs) ?? null;
  const isEmpty = window === null || window.newest < 0;
  const scale = isEmpty ? null : traceScale(window);
  const on = sniffer.kind === "ready" && sniffer.sniffer.assembly !== null;
  return {
    title: text.title,
    back: words.text.nose.back,
    text: text.text,
    sniffer: snifferView(sniffer, state, words),
    windows: {
      label: text.window,
      options: TRACE_WINDOWS_MS.map((lengthMs) => ({
        id: String(lengthMs),
        label: durationText(lengthMs, words),
        chosen: lengthMs === windowMs,
      })),
    },
    chart: scale === null || isEmpty ? null : chartOf(scale, windowMs, words),
    empty: isEmpty ? text.empty : null,
    table: {
      caption: text.table,
      columns: [text.channel, text.now, text.change, text.range],
      rows:
        scale === null || isEmpty
          ? []
          : window.least.map((_, channel) =>
              rowOf(window, channel, Math.exp(scale.reference[channel] ?? Number.NaN), state.channels, words),
            ),
    },
    listen: sniffer.kind === "ready" ? { label: on ? text.stop : text.start, on } : null,
  };
}

function chartOf(scale: TraceScale, windowMs: TraceWindowMs, words: LiveWords): LiveView["chart"] {
  const { live: text } = words.text.nose;
  const factor = numberText(scale.factor, words.formats, 2);
  return {
    label: text.chart(numberText(scale.reference.length, words.formats), durationText(windowMs, words)),
    top: text.up(factor),
    bottom: text.down(factor),
    from: text.ago(durationText(windowMs, words)),
    to: text.latest,
  };
}

/** The newest value, its change against the first of the window, and both ends. */
function rowOf(
  window: TraceWindow,
  channel: number,
  reference: number,
  channels: readonly Channel[],
  words: LiveWords,
) {
  const { live: text } = words.text.nose;
  const [least, most] = [window.least[channel] ?? [], window.most[channel] ?? []];
  const low = Math.min(...[...least].filter(Number.isFinite));
  const high = Math.max(...[...most].filter(Number.isFinite));
  const newest = newestOf(window, channel);
  const heaterC = channels[channel]?.heaterC ?? null;
  const name = numberText(channel + 1, words.formats);
  return {
    label: heaterC === null ? name : text.heated(name, unitText(heaterC, "celsius", words.formats)),
    cells: [
      ohmText(newest, words),
      percentText(newest / reference - 1, words.formats, 1),
      ohmRangeText(low, high, words),
    ],
  };
}

function newestOf({ newest, least, most }: TraceWindow, channel: number): number {
  const [low, high] = [least[channel] ?? [], most[channel] ?? []];
  const length = low.length;
  for (let bucket = newest; bucket > newest - length && bucket >= 0; bucket -= 1) {
    const slot = bucket % length;
    const middle = Math.sqrt((low[slot] ?? Number.NaN) * (high[slot] ?? Number.NaN));
    if (Number.isFinite(middle)) return middle;
  }
  return Number.NaN;
}

/** "51.2 kΩ": three figures are enough to see a change of 1 %. */
function ohmText(ohm: number, words: LiveWords): string {
  const unit = unitOf(ohm);
  return `${figuresText(ohm / unit.ohm, words)}\u00a0${unit.name}`;
}

/** "45.4 – 50 kΩ": a unit that both ends share is said once, so that a row of the table stays on one line of a phone. */
function ohmRangeText(low: number, high: number, words: LiveWords): string {
  const unit = unitOf(low);
  const from = unit === unitOf(high) ? figuresText(low / unit.ohm, words) : ohmText(low, words);
  return `${from}\u00a0– ${ohmText(high, words)}`;
}

const OHM = { ohm: 1, name: "Ω" };
const KILO_OHM = { ohm: 1e3, name: "kΩ" };
const MEGA_OHM = { ohm: 1e6, name: "MΩ" };

function unitOf(ohm: number) {
  return ohm >= MEGA_OHM.ohm ? MEGA_OHM : ohm >= KILO_OHM.ohm ? KILO_OHM : OHM;
}

function figuresText(value: number, { formats }: LiveWords): string {
  return numberText(value, formats, value >= 100 ? 0 : value >= 10 ? 1 : 2);
}
