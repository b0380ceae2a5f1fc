/** A nose that is offered, beside the one in use, and bringing a nose up to date. */
export const offer = {
  title: "Decide on a nose",
  heading: {
    taught: "A new nose is ready",
    refreshed: "The nose is brought up to date",
    moved: "A nose moved to another sniffer",
    file: "A nose from a file",
    version: "Put this nose back?",
  },
  comparing: "Trying both on the same plates",
  same: (plates: string) =>
    `Both were tried on the same plates, up to ${plates} a group, none of which they had met.`,
  sameMoved: (plates: string) =>
    `Both were tried on plates of the second sniffer, up to ${plates} a group: the taught nose as it is, and the moved one by a map made without that plate.`,
  sameFresh: (plates: string, parts: string) =>
    `Tried on ${plates} fresh plates, each by the old nose and by one brought up to date without that plate (${parts} parts).`,
  apart:
    "There is no plate that both could be tried on. Each stands with its own figures, from plates of its own.",
  alone: "No nose is in use to compare it with. These are its own figures, from plates it had not met.",
  better: (where: string) => `Better: ${where}`,
  worse: (where: string) => `Worse: ${where}`,
  unclear: (where: string) => `No clear difference: ${where}`,
  losesSmelled: (groups: string) =>
    `Lost with the new one: it can never say “smelled” for ${groups} yet, the one in use can.`,
  losesNotSmelled: (groups: string) =>
    `Lost with the new one: it can never say “not smelled” for ${groups} yet, the one in use can.`,
  where: {
    found: (group: string) => `finding ${group}`,
    quiet: (group: string) => `false alarms without ${group}`,
  },
  few: "So few plates can hardly show a difference. No clear difference does not mean that they are equal.",
  loss: (older: string, newer: string, plates: string) =>
    `Log loss on these ${plates} plates: ${older} in use, ${newer} new; lower is better`,
  change: {
    better: (newer: string, older: string, p: string) =>
      `better here: ${newer} right only with the new one, ${older} only with the old (${p})`,
    worse: (newer: string, older: string, p: string) =>
      `worse here: ${newer} right only with the new one, ${older} only with the old (${p})`,
    same: (newer: string, older: string, p: string) =>
      `no clear difference: ${newer} right only with the new one, ${older} only with the old (${p})`,
  },
  p: (value: string) => `p\u00a0=\u00a0${value}`,
  pBelow: (value: string) => `p\u00a0<\u00a0${value}`,
  test: "Exact test of McNemar on the plates where they differ; p corrected for the number of lines.",
  acceptVersion: "Put it back",
  rejectVersion: "Leave it as it is",
  acceptFile: "Use this nose",
  keptVersion: "The one in use now stays under Versions.",
  suits: "It was taught on another sniffer than the one connected. With this one every finding is uncertain.",
  how: "How",
  anew: "Anew, from all samples",
  refresh: (plates: string) => `Bring the nose in use up to date with ${plates} fresh plates`,
  refreshHint:
    "Old samples are moved by the drift that the fresh ones show, and count less. The gain is tried on fresh plates. It takes some six times as long.",
  refreshKnown: (known: string, taught: string) =>
    `Of the ${taught} plates that this nose was taught, ${known} are here as samples; the refreshed nose knows no others.`,
  refreshStart: "Bring it up to date",
  refreshNone:
    "To bring the nose in use up to date instead, keep two fresh plates: sniffed with its sniffer since it was taught.",
  due: {
    title: "Fresh samples are worthwhile",
    drift: "The check jar says that the sniffer has drifted.",
    age: (days: string) =>
      `This nose was taught more than ${days} days ago, and sensors change within weeks.`,
    ask: (plates: string) =>
      `Check plates that you know and keep them as samples: ${plates} with and ${plates} without each group bring the nose up to date.`,
    enough: (group: string) => `${group}: enough fresh plates`,
    both: (group: string, present: string, absent: string) =>
      `${group}: ${present} more with it, ${absent} more without`,
    present: (group: string, present: string) => `${group}: ${present} more with it`,
    absent: (group: string, absent: string) => `${group}: ${absent} more without it`,
    go: "Bring it up to date",
  },
};
