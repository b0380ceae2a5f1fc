/** The simulated year as a document: what the command printed, its picture, and what it cannot show. */
import { basename } from "node:path";

interface Asked {
  readonly seed: string;
  readonly plates: string;
  readonly out: string;
  readonly document?: string | undefined;
}

/** @param printed - the lines of the command, as they were printed */
export function yearDocument(
  printed: readonly string[],
  { seed, plates, out, document = "" }: Asked,
): string {
  return `# A simulated year of one sniffer

Written by \`npm run year -- --seed ${seed} --plates ${plates} --out ${out} --document ${document}\`; nothing in the
table was typed by hand. Another seed is another sniffer and another year, and its numbers differ; with
some the pairs show no gain, and the nose is not moved.

\`\`\`text
${printed.join("\n")}
\`\`\`

![The check jar, the findings given and the wrong ones among them, month by month](${basename(out)})

How to read it:

- The check jar is sniffed once a week. Its first ten readings set target and limits; from the fifth month on the films
  are poisoned on purpose, on top of their ageing.
- **A** is what the nose would have claimed with nobody watching the sniffer, **B** what it claims with the chart: from
  the alarm on every finding is _uncertain, drifted_.
- **C** is the nose refreshed with the plates of the month of the alarm. **D** to **F** are the same plates under a
  second sniffer: refused for its name; as if its name did not matter; and with the nose moved by plates that both
  sniffed.
- A finding given is one that is not _uncertain_; a wrong one said _smelled_ or _not smelled_ against what was served.

What it cannot show: sniffer, poison, seasons and dishes are those of the virtual sniffer
([PHYSICS.md](../../src/virtual/PHYSICS.md)). No real sniffer has been followed for a year, or at all.
`;
}
