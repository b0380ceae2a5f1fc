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

export interface CleanAirView {
  readonly phase: "cleanAir";
  readonly title: string;
  readonly text: string;
  readonly status: string;
  readonly remedy: string | null;
  /** How long the window that must be steady still takes to fill; null once it is full. */
  readonly atLeast: string | null;
  readonly guide: { readonly pose: "cleanAir"; readonly lines: readonly string[] };
  readonly waited: string | null;
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
  const { steadiness, gathered, sinceMs } = state;
  const lastMs = gathered.cleanAir.at(-1)?.atMs;
  const { why } = steadiness;
  return {
    phase: "cleanAir",
    title: cleanAir.title,
    text: cleanAir.text,
    status: why === null || why === "tooFewSweeps" ? cleanAir.filling : cleanAir[why],
    remedy: why === null ? null : cleanAir.remedies[why],
    atLeast: fillingText(state, words),
    guide: { pose: "cleanAir", lines: [cleanAir.away, cleanAir.open, cleanAir.lungs] },
    waited:
      sinceMs === null || lastMs === undefined
        ? null
        : cleanAir.waited(durationText(lastMs - sinceMs, words)),
    gauges: [
      gauge(cleanAir.drift, steadiness.drift, STEADY_MAX_DRIFT, words),
      gauge(cleanAir.scatter, steadiness.scatter, STEADY_MAX_SCATTER, words),
    ],
  };
}

/** The least time left: the window must be full before anything can be called steady. */
function fillingText(
  { gathered, steadiness }: Extract<CheckState, { phase: "cleanAir" }>,
  words: CleanAirWords,
): string | null {
  if (steadiness.why !== "tooFewSweeps") return null;
  const [first, last] = [gathered.cleanAir[0], gathered.cleanAir.at(-1)];
  const doneMs = first === undefined || last === undefined ? 0 : last.atMs - first.atMs;
  return words.text.check.cleanAir.atLeast(durationText(STEADY_WINDOW_MS - doneMs, words));
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
