/** Speaks every state of a sniffer that the gallery does not show. */
import type { SnifferFailure } from "../../src/flows/snifferState.js";
import type { Words } from "../../src/text/catalogue.js";
import { SNIFFER_STATES } from "../../src/profile/status.js";
import { reconnectView } from "../../src/views/reconnectView.js";
import { snifferView } from "../../src/views/snifferView.js";
import { fitnessItems } from "../../src/views/fitnessItems.js";
import { fitnessView } from "../../src/views/fitnessView.js";
import { fitnessAt } from "./fitnessAt.js";
import { SNIFFER_CONTEXT } from "../browser/gallery/fixtures/plates.js";
import { READY, SNIFFER } from "../browser/gallery/fixtures/sniffers.js";
import { NOW_MS } from "../browser/gallery/fixtures/words.js";

const FAILURES: readonly SnifferFailure[] = [
  { kind: "unsupported" },
  { kind: "notAllowed" },
  { kind: "unreachable" },
  { kind: "notASniffer" },
  { kind: "forgotten", name: "x" },
  { kind: "badLayout", error: { kind: "checksum" } },
  { kind: "unexpected", detail: "x" },
];

export function speakSniffers(words: Words): void {
  const context = SNIFFER_CONTEXT;
  for (const cause of ["hidden", "radioOff"] as const)
    reconnectView({ state: { kind: "paused", cause }, secondsLeft: null }, words);
  for (const why of ["bound", "person", "willNotMend"] as const)
    reconnectView({ state: { kind: "gaveUp", why }, secondsLeft: null }, words);
  reconnectView({ state: { kind: "trying", tries: 1 }, secondsLeft: null }, words);
  for (const failure of FAILURES) snifferView({ kind: "failed", failure }, context, words);
  for (const state of SNIFFER_STATES) {
    const status = { ...SNIFFER.status!, state };
    snifferView({ kind: "ready", sniffer: { ...SNIFFER, status, batteryPct: null } }, context, words);
  }
  snifferView({ kind: "ready", sniffer: { ...SNIFFER, status: null } }, context, words);
  snifferView({ kind: "choosing" }, context, words);
  for (const fit of ["well", "attention", "renewed", "unknown"] as const) fitnessItems(fitnessAt(fit), words);
  const jar = { readings: [{ at: "2026-11-10T09:00:00Z", score: 1 }], limit: null };
  for (const inControl of [true, false, null])
    fitnessView({ sniffer: READY, cleanAirAt: null, jar: { ...jar, inControl }, nowMs: NOW_MS }, words);
}
