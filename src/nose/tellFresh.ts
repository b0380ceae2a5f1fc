import type { Nose } from "./nose.js";
import { tellTaught } from "./tellTaught.js";

/** What tells whether a sample is fresh. */
export interface SampleOrigin {
  readonly plate: string;
  /** ISO 8601 instant. */
  readonly takenAt: string;
  readonly snifferId: string;
}

/** Tells which samples are fresh for a nose: of its sniffer, taken since it was taught, of plates it was not taught. */
export function tellFresh(nose: Nose): (sample: SampleOrigin) => boolean {
  const taught = tellTaught(nose);
  const taughtMs = Date.parse(nose.taughtAt);
  return (sample) =>
    sample.snifferId === nose.sniffer.id && Date.parse(sample.takenAt) > taughtMs && !taught(sample);
}
