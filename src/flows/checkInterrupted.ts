/** How a check begins, how it is cut short, and how it goes on from there. Part of `checkFlow`. */
import { steadiness } from "../sniff/steadiness.js";
import type { RecordedFlag } from "../sniff/sniff.js";
import type {
  CheckEffect,
  CheckState,
  CheckStep,
  CheckSubject,
  InterruptCause,
  RunAfterLoss,
  RunningState,
} from "./checkState.js";
import { nothingGathered, phaseOf, sniffFrom, withFlag } from "./gathered.js";
import { afterLoss } from "./resumeSniff.js";

type Interrupted = Extract<CheckState, { phase: "interrupted" }>;

const step = (state: CheckState, ...effects: CheckEffect[]): CheckStep => ({ state, effects });

/** A fresh run in clean air. */
export function beginCheck(subject: CheckSubject): CheckStep {
  return step(
    {
      phase: "cleanAir",
      gathered: nothingGathered(subject),
      steadiness: steadiness(phaseOf([])),
      sinceMs: null,
    },
    { kind: "keepAwake", on: true },
    { kind: "startSweeps" },
    { kind: "announce", phase: "cleanAir" },
  );
}

/** What an interruption leaves on the sniff, should it be used all the same. */
const FLAG_OF_CAUSE: Readonly<Record<InterruptCause, RecordedFlag | null>> = {
  linkLost: "linkLost",
  snifferRestarted: "linkLost",
  snifferFault: "heaterFault",
  noSweeps: "sweepsLost",
  commandRefused: null,
  neverSteady: null, // flagged once the user goes on all the same
};

/** The check stands still; what was gathered over the plate is kept at once. */
export function interrupt(before: RunningState, cause: InterruptCause): CheckStep {
  const flag = FLAG_OF_CAUSE[cause];
  const gathered = flag === null ? before.gathered : withFlag(before.gathered, flag);
  const sniff = sniffFrom(gathered);
  const during = before.phase;
  return step(
    { phase: "interrupted", cause, during, gathered, before, refused: null, usable: sniff !== null },
    ...(sniff === null ? [] : [{ kind: "saveDraft", sniff } as const]),
    { kind: "announce", phase: "interrupted" },
  );
}

/** The user goes on in air that never settled: the sniff says so from now on. */
export function goOnUnsteady(state: Interrupted): CheckStep {
  const gathered = withFlag(state.gathered, "cleanAirUnsteady");
  return step(
    { phase: "overPlate", gathered, steadyAtMs: gathered.cleanAir.at(-1)?.atMs ?? 0, countingDown: false },
    { kind: "announce", phase: "overPlate" },
  );
}

/** A count-down that was cut off is asked for again. */
const ready = (before: RunningState): RunningState =>
  before.phase === "overPlate" ? { ...before, countingDown: false } : before;

/** The sniffer that was lost is back: goes on where that is sound; null where the loss was not what stopped the check. */
export function linkBack(state: Interrupted, run: RunAfterLoss): CheckStep | null {
  if (state.cause !== "linkLost") return null;
  const next = afterLoss(state.during, run);
  switch (next.kind) {
    case "goOn":
      return step(ready(state.before), { kind: "announce", phase: state.during });
    case "beginAgain":
      return beginCheck(state.gathered.subject);
    case "keepPart":
      return step({ ...state, refused: next.why }, { kind: "stopSweeps" });
  }
}
