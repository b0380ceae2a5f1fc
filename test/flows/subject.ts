import type { CheckSubject } from "../../src/flows/checkState.js";

/** A check of one plate, by a sniffer of one channel. */
export const SUBJECT: CheckSubject = {
  sniffId: "s1",
  plate: "p1",
  occasion: "o1",
  dish: "miso broth",
  takenAt: "2026-11-25T18:30:00Z",
  snifferId: "n1",
  channels: [{ sensor: 0, heaterC: 250, dwellMs: 500 }],
  headspaceLimitMs: 60_000,
};
