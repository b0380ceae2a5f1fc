import { SMELLED_LEAST_PROBABILITY } from "../finding/bands.js";
import type { GroupFinding } from "../finding/finding.js";
import type { Words } from "../text/catalogue.js";
import { percentText } from "../text/formats.js";
import { type Tone, toneOf } from "./tone.js";

/** A probability on the scale from "not there" to "there". Positions are fractions of the scale. */
export interface BandView {
  readonly tone: Tone;
  readonly low: string;
  readonly high: string;
  readonly middle: string;
  readonly uncertainFrom: number;
  readonly uncertainTo: number;
  readonly interval: { readonly from: number; readonly to: number } | null;
  readonly point: number | null;
  /** The whole scale in words. */
  readonly spoken: string;
}

/** The stretch in which an answer counts as uncertain is given by the band edges of `finding/`. */
export function bandView(
  finding: Pick<GroupFinding, "verdict" | "probability" | "interval">,
  acceptedMissRate: number,
  words: Words<"finding">,
): BandView {
  const { finding: text } = words.text;
  const { interval, probability } = finding;
  const percent = (fraction: number) => percentText(fraction, words.formats);
  const uncertainFrom = Math.min(acceptedMissRate, SMELLED_LEAST_PROBABILITY);
  return {
    tone: toneOf(finding.verdict),
    low: text.bandLow,
    high: text.bandHigh,
    middle: text.bandMiddle,
    uncertainFrom,
    uncertainTo: SMELLED_LEAST_PROBABILITY,
    interval: interval === null ? null : { from: interval.low, to: interval.high },
    point: probability,
    spoken:
      interval === null
        ? text.bandSpokenNone
        : text.bandSpoken(
            percent(interval.low),
            percent(interval.high),
            percent(uncertainFrom),
            percent(SMELLED_LEAST_PROBABILITY),
          ),
  };
}
