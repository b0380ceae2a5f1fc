import type { Rate } from "../nose/report.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";

/** A share in per cent, with what it was counted on. */
export interface RateView {
  readonly label: string;
  /** null where nothing was counted. */
  readonly percent: string | null;
  readonly text: string;
}

/** A rate in words; null stands for "not tried". */
export function rateView(label: string, rate: Rate | null, words: Words<"nose">): RateView {
  const { nose } = words.text;
  if (rate === null || rate.trials === 0) return { label, percent: null, text: nose.shareNone };
  const whole = (value: number) => numberText(value, words.formats);
  const percent = (fraction: number) => percentText(fraction, words.formats);
  return {
    label,
    percent: percent(rate.events / rate.trials),
    text: nose.share(whole(rate.events), whole(rate.trials), percent(rate.low), percent(rate.high)),
  };
}
