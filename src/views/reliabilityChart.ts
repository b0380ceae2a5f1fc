import type { ReliabilityBin } from "../stats/reliabilityCurve.js";
import { type Formats, numberText, percentText } from "../text/formats.js";

/** A reliability diagram on a field of 100 by 100, and the same as sentences. */
export interface ReliabilityChartView {
  readonly caption: string;
  readonly across: string;
  readonly up: string;
  /** Centre and radius of each bin's dot; larger dots stand for more plates. */
  readonly dots: readonly { readonly x: number; readonly y: number; readonly radius: number }[];
  readonly rows: readonly string[];
}

const LEAST_RADIUS = 2;
const LARGEST_RADIUS = 6;

/** Dots lie on the slanted line where what was called came true as often as called. */
export function reliabilityChart(
  labels: {
    readonly caption: string;
    readonly called: string;
    readonly cameTrue: string;
    readonly row: (called: string, observed: string, plates: string) => string;
  },
  bins: readonly ReliabilityBin[],
  formats: Formats,
): ReliabilityChartView {
  const most = Math.max(1, ...bins.map(({ count }) => count));
  return {
    caption: labels.caption,
    across: labels.called,
    up: labels.cameTrue,
    dots: bins.map(({ meanPredicted, observedFraction, count }) => ({
      x: 100 * meanPredicted,
      y: 100 * (1 - observedFraction),
      radius: LEAST_RADIUS + (LARGEST_RADIUS - LEAST_RADIUS) * Math.sqrt(count / most),
    })),
    rows: bins.map(({ meanPredicted, observedFraction, count }) =>
      labels.row(
        percentText(meanPredicted, formats),
        percentText(observedFraction, formats),
        numberText(count, formats),
      ),
    ),
  };
}
