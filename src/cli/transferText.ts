import type { TransferGain } from "../nose/nose.js";
import type { TransferError, Transferred } from "../transfer/transferNose.js";
import { rateText } from "./assessText.js";

const METHODS = {
  offset: "an offset for each channel",
  slopeAndOffset: "slope and offset for each channel",
  piecewise: "piecewise, each sensor from its own steps",
  direct: "direct, each channel from all",
} as const;

/** What a transfer brought, as plain text. */
export function transferText({ nose, comparison }: Transferred): string {
  const { transfer } = nose;
  if (transfer === undefined) return `${nose.name}: not moved\n`;
  const { of, method, strength, pairs, gain } = transfer;
  const lines = [
    `${nose.name}: ${of.name}, taught on sniffer ${of.snifferId}, moved to sniffer ${nose.sniffer.id}`,
    `${pairs} pairs; chosen by leaving each out: ${METHODS[method]}${strength > 0 ? `, ridge ${strength}` : ""}`,
    gainText(gain),
    "Evidence of the moved nose: plates of the second sniffer that were not taught, each through a map made without it",
    ...comparison.flatMap(({ group, found, quiet }) => [
      `${group}:`,
      ...(["found", "quiet"] as const).flatMap((which) => {
        const { older, newer } = which === "found" ? found : quiet;
        const what = which === "found" ? "right where it was there" : "right where it was not";
        return [
          `  ${what}: unmoved ${rateText(older)}`,
          `  ${" ".repeat(what.length)}    moved ${rateText(newer)}`,
        ];
      }),
    ]),
    ...(comparison.length === 0
      ? ["  none: findings stay uncertain until plates with known groups are sniffed"]
      : []),
  ];
  return `${lines.join("\n")}\n`;
}

function gainText({ before, after, factor, low, high }: TransferGain): string {
  const [one, two] = [before.toFixed(3), after.toFixed(3)];
  return (
    `difference on pairs left out, in taught standard deviations: ${one} before, ${two} after; ` +
    `smaller by a factor of ${factor.toFixed(2)} (95 % ${low.toFixed(2)} to ${high.toFixed(2)})`
  );
}

/** Why a nose was not moved, as one line. */
export function transferErrorWords(error: TransferError): string {
  switch (error.kind) {
    case "sameSniffer":
      return "the nose was taught on this sniffer; there is nothing to move";
    case "otherChannels":
      return "this sniffer has other channels; teach a nose on it";
    case "alreadyMoved":
      return "this nose was moved already; move the one that was taught";
    case "tooFewPairs":
      return `${error.pairs} plates were sniffed on both; ${error.more} more are needed. Findings stay uncertain: another sniffer`;
    case "noGain":
      return (
        `no gain was shown with ${error.pairs} pairs (${gainText(error.gain)}). Findings stay uncertain: another sniffer` +
        (error.more === null ? "" : `; going by these, about ${error.more} more pairs would show one`)
      );
  }
}
