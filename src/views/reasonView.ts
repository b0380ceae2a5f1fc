import type { Reason } from "../finding/finding.js";
import { trialsToShow } from "../stats/proportionInterval.js";
import type { Words } from "../text/catalogue.js";
import { numberText, percentText } from "../text/formats.js";
import { durationText } from "./durationText.js";

/** Why a finding is uncertain, and what helps. */
export interface ReasonView {
  readonly kind: string;
  readonly sentence: string;
  readonly remedy: string;
}

/** One reason in plain words. */
export function reasonView(reason: Reason, words: Words<"common" | "finding">): ReasonView {
  const { reasons } = words.text.finding;
  const whole = (value: number) => numberText(value, words.formats);
  const percent = (fraction: number) => percentText(fraction, words.formats, 1);
  const more = ({ needed, plates }: { readonly needed: number; readonly plates: number }) =>
    whole(Math.max(0, needed - plates));
  const told = (key: keyof typeof reasons, sentence: string): ReasonView => ({
    kind: reason.kind,
    sentence,
    remedy: reasons[key].remedy,
  });
  switch (reason.kind) {
    case "tooFewSweeps":
      return told(reason.kind, reasons.tooFewSweeps.sentence(whole(reason.sweeps), whole(reason.needed)));
    case "staleCleanAir":
      return told(reason.kind, reasons.staleCleanAir.sentence(durationText(reason.ageMs, words)));
    case "saturated":
      return told(reason.kind, reasons.saturated.sentence(whole(reason.channels)));
    case "weakSignal":
      return told(
        reason.kind,
        reasons.weakSignal.sentence(
          numberText(reason.signalToNoise, words.formats, 1),
          numberText(reason.needed, words.formats, 1),
        ),
      );
    case "tooFewPlates":
      return reason.truth === "absent"
        ? told("tooFewAbsent", reasons.tooFewAbsent.sentence(whole(reason.plates), more(reason)))
        : told(
            "tooFewPresent",
            reasons.tooFewPresent.sentence(
              whole(reason.plates),
              percent(reason.bestShowable ?? 1),
              more(reason),
            ),
          );
    case "missRateNotShown":
      return told(
        reason.kind,
        reasons.missRateNotShown.sentence(
          whole(reason.misses),
          whole(reason.plates),
          percent(reason.upper),
          percent(reason.accepted),
          whole(moreToShow(reason.accepted, reason.misses, reason.plates)),
        ),
      );
    default:
      return told(reason.kind, reasons[reason.kind].sentence);
  }
}

/** Plates that would show the rate if none of them were missed. A kept finding may hold any numbers. */
function moreToShow(accepted: number, misses: number, plates: number): number {
  if (!(accepted > 0 && accepted <= 1) || !Number.isSafeInteger(misses) || misses < 0) return 0;
  return Math.max(0, trialsToShow(accepted, misses) - plates);
}
