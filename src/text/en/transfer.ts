import { plural } from "./plural.js";

/** A nose on another sniffer. */
export const transfer = {
  link: "Another sniffer",
  linkText: "Use this nose on a second one",
  title: "Use this nose on another sniffer",
  text: "No two sniffers are alike. A nose is not trusted on a sniffer that it was not taught on until plates sniffed on both have shown how the two differ.",
  nose: "Nose",
  taughtOn: "Taught on",
  connected: "Connected",
  noNose: "none",
  none: "none",
  howTitle: "How",
  how: [
    "Sniff a plate with the taught sniffer and keep it as a sample.",
    "Connect the other one, sniff the same plate, and keep it as “same plate as the sniff before”.",
    "Sniff the check jar on both within a day: that is one more pair.",
    "Choose plates as different as you can. Do it while the taught sniffer is still well.",
  ],
  pairsTitle: "Plates sniffed on both",
  both: "on both",
  onlyFirst: "still to be sniffed on the other",
  onlySecond: "still to be sniffed on the taught one",
  noPairs: "No plate has been sniffed on the connected sniffer yet.",
  pairs: (count: string) => `${count} ${plural(count, "plate", "plates")} so far`,
  jar: (readings: string) =>
    `The check jar: one pair, from ${readings} ${plural(readings, "reading", "readings")} taken within a day of the taught sniffer’s. It always smells the same, so more readings make it steadier but are no more pairs.`,
  stop: "Stop",
  again: "Try again",
  working: "Working out how the two differ",
  outcomeTitle: "What it brings",
  problems: {
    noNose: "There is no nose to move. Teach one first.",
    noSniffer: "Connect the sniffer that the nose is to be used on.",
    sameSniffer: "This nose was taught on the connected sniffer. There is nothing to move.",
    otherChannels: "The connected sniffer has other sensors or heater steps. Teach a nose on it.",
    alreadyMoved: "This nose was moved before. Put back the one that was taught, and move that.",
    stopped: "Stopped. Nothing has changed.",
    busy: "A nose is being taught. Try again when it is ready.",
    failed: (detail: string) => `The phone could not compute it: ${detail}. Try with another browser.`,
    workerCrashed: (detail: string) =>
      `The computing stopped: ${detail}. Close other apps to free memory, and try again.`,
    badNose: "What came back does not hold together, so it was thrown away. Try again.",
    storage: "The samples could not be read. Close the app, open it, and try again.",
  },
  tooFew: (more: string) =>
    `${more} more ${plural(more, "plate", "plates")} sniffed on both are needed. Until then findings stay uncertain: another sniffer.`,
  noGain: "These plates do not show that moving the nose helps. Findings stay uncertain: another sniffer.",
  noGainMore: (more: string) => `Going by them, about ${more} more might show it.`,
  gain: (factor: string, low: string, high: string) =>
    `On plates left out one by one the two sniffers differ ${factor} times less (likely between ${low} and ${high} times).`,
  differences: (before: string, after: string) =>
    `Difference, against the spread of the taught plates: ${before} before, ${after} after.`,
  evidence: (plates: string) =>
    `What the moved nose may say rests only on plates of the connected sniffer that it was not taught: ${plates} so far. What the taught sniffer had shown no longer counts.`,
  movedFrom: (sniffer: string, pairs: string, factor: string, low: string, high: string) =>
    `Moved from sniffer ${sniffer} by ${pairs} ${plural(pairs, "plate", "plates")} that both sniffed. Held out one by one, they differ ${factor} times less (likely between ${low} and ${high} times).`,
  accept: "Look at the moved nose",
};
