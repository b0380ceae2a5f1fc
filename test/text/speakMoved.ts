/** Speaks of a nose that was moved to another sniffer, and of what can stop a move. */
import type { Nose, NoseTransfer } from "../../src/nose/nose.js";
import type { Words } from "../../src/text/catalogue.js";
import { noseHomeView } from "../../src/views/noseHomeView.js";
import { teachView } from "../../src/views/teachView.js";
import { transferView, type TransferOutcome } from "../../src/views/transferView.js";
import { COMPARED, NOSE } from "../browser/gallery/fixtures/noses.js";
import { NOW_MS } from "../browser/gallery/fixtures/words.js";
import { TEACH } from "./teachAt.js";

const TRANSFER: NoseTransfer = {
  of: { id: "a", name: "Market", taughtAt: "2026-11-20T18:00:00Z", snifferId: "0000000000000001" },
  method: "offset",
  strength: 0,
  pairs: 7,
  map: { matrix: Float32Array.of(1), offset: Float32Array.of(0.1) },
  gain: { before: 0.6, after: 0.3, factor: 2, low: 1.5, high: 2.7 },
};
const MOVED: Nose = { ...NOSE, transfer: TRANSFER };

const STOPPED: readonly TransferOutcome[] = [
  { kind: "busy" },
  { kind: "failed", detail: "x" },
  { kind: "badNose" },
  { kind: "storage" },
];

export function speakMoved(words: Words): void {
  const names = { noseName: "x", taughtOn: "x", connected: "x", plates: [], jarReadings: 0 };
  for (const outcome of STOPPED) transferView({ ...names, outcome }, words);
  const offer = { kind: "proposed", nose: MOVED, before: NOSE, source: "moved", compared: COMPARED } as const;
  teachView({ ...TEACH, teaching: offer }, words);
  noseHomeView(
    {
      samples: 1,
      acceptedMissRate: 0.05,
      groups: ["egg"],
      nowMs: NOW_MS,
      shown: [],
      refresh: null,
      active: { kind: "ready", nose: MOVED, demo: false },
    },
    words,
  );
}
