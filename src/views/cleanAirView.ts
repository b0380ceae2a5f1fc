import type { CheckState } from "../flows/checkState.js";
import { STEADY_MAX_DRIFT, STEADY_MAX_SCATTER, STEADY_WINDOW_MS } from "../sniff/steadiness.js";
import type { Words } from "../text/catalogue.js";
import { percentText } from "../text/formats.js";
import { durationText } from "./durationText.js";

/** A value against its limit. */
export interface GaugeView {
  readonly label: string;
  readonly value: string;
  /** "within the limit", "beyond the limit", "not known yet". */
  readonly word: string;
  readonly state: "within" | "beyond" | "unknown";
  /** Length of the bar as a share of the whole; the limit stands at `limitAt`. */
  readonly filled: number;
  readonly limitAt: number;
}

/** What the air is like, and what helps. */
export interface AirWords {
  readonly status: string;
  readonly remedy: string;
}

export interface CleanAirView {
  readonly phase: "cleanAir";
  readonly title: string;
  readonly text: string;
  readonly said: AirWords;
  /** Whatever may be said of the air, so that each can take the same room. */
  readonly sayings: readonly AirWords[];
  /** How long the window that must be steady still takes to fill; once it is full, how long the wait was. */
  readonly time: string;
  readonly guide: { readonly pose: "cleanAir"; readonly lines: readonly string[] };
  readonly gauges: readonly GaugeView[];
}

/** The limit stands two thirds along, so that a value half as large again still fits. */
const LIMIT_AT = 2 / 3;

type CleanAirWords = Words<"common" | "check">;

/** How steady the air is, against both limits. */
export function cleanAirView(
  state: Extract<CheckState, { phase: "cleanAir" }>,
  words: CleanAirWords,
): CleanAirView {
  const { cleanAir } = words.text.check;
  const { steadiness } = state;
  return {
    phase: "cleanAir",
    title: cleanAir.title,
    text: cleanAir.text,
    said: airWords(steadiness.why ?? "tooFewSweeps", words),
    sayings: (["tooFewSweeps", "drifting", "scattered"] as const).map((why) => airWords(why, words)),
    time: timeText(state, words),
    guide: { pose: "cleanAir", lines: [cleanAir.away, cleanAir.open, cleanAir.lungs] },
    gauges: [
      gauge(cleanAir.drift, steadiness.drift, STEADY_MAX_DRIFT, words),
      gauge(cleanAir.scatter, steadiness.scatter, STEADY_MAX_SCATTER, words),
    ],
  };
}

function airWords(
  why: keyof CleanAirWords["text"]["check"]["cleanAir"]["air"],
  words: CleanAirWords,
): AirWords {
  const { status, remedy } = words.text.check.cleanAir.air[why];
  return { status, remedy };
}

/** The least time left, as long as the window must fill before anything can be called steady; then the time gone by. */
function timeText(
  { gathered, steadiness, sinceMs }: Extract<CheckState, { phase: "cleanAir" }>,
  words: CleanAirWords,
): string {
  const { cleanAir } = words.text.check;
  const lastMs = gathered.cleanAir.at(-1)?.atMs ?? 0;
  const firstMs = gathered.cleanAir[0]?.atMs ?? lastMs;
  return steadiness.why === "tooFewSweeps"
    ? cleanAir.atLeast(durationText(STEADY_WINDOW_MS - (lastMs - firstMs), words))
    : cleanAir.waited(durationText(lastMs - (sinceMs ?? lastMs), words));
}

/** Both are changes of ln R, which for small values is the relative change of R. */
function gauge(label: string, value: number, limit: number, words: CleanAirWords): GaugeView {
  const { cleanAir } = words.text.check;
  if (!Number.isFinite(value)) {
    return { label, value: "", word: cleanAir.notYet, state: "unknown", filled: 0, limitAt: LIMIT_AT };
  }
  const within = value <= limit;
  return {
    label,
    value: cleanAir.ofLimit(percentText(value, words.formats, 1), percentText(limit, words.formats, 1)),
    word: within ? cleanAir.within : cleanAir.beyond,
    state: within ? "within" : "beyond",
    filled: Math.min(1, (value / limit) * LIMIT_AT),
    limitAt: LIMIT_AT,
  };
}
