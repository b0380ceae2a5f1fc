import { expect, it } from "vitest";
import { createTraceRing } from "../../src/sniff/traceRing.js";
import { liveView } from "../../src/views/liveView.js";
import { SNIFFER_CONTEXT } from "../browser/gallery/fixtures/plates.js";
import { READY } from "../browser/gallery/fixtures/sniffers.js";
import { ENGLISH, GERMAN } from "../browser/gallery/fixtures/words.js";

/** The last column of one channel that was first `from`, then `to` ohm. */
function rangeOf(from: number, to: number, words: typeof ENGLISH): string | undefined {
  const ring = createTraceRing(1);
  [from, to].forEach((ohm, sweep) => ring.push(sweep * 1000, [ohm]));
  const channels = [{ sensor: 0, heaterC: 200, dwellMs: 500 }];
  const state = { ...SNIFFER_CONTEXT, sniffer: READY, channels, ring, windowMs: 60_000 } as const;
  return liveView(state, words).table.rows[0]?.cells.at(-1);
}

// Counted by hand. No number stands apart from its unit or its dash: the spaces before them do not break.
it.each([
  [40_100, 53_900, ENGLISH, "40.1\u00a0– 53.9\u00a0kΩ"],
  [53_900, 40_100, GERMAN, "40,1\u00a0– 53,9\u00a0kΩ"],
  [999, 1000, ENGLISH, "999\u00a0Ω\u00a0– 1\u00a0kΩ"],
  [950_000, 1_200_000, ENGLISH, "950\u00a0kΩ\u00a0– 1.2\u00a0MΩ"],
  [5, 5, ENGLISH, "5\u00a0– 5\u00a0Ω"],
])(
  "says of a channel between %d and %d ohm a shared unit once, unlike units both",
  (from, to, words, said) => {
    expect(rangeOf(from, to, words)).toBe(said);
  },
);
