/** One check at the table as a pure function from state and event to the next state and effects. */
import { STALE_CLEAN_AIR_MS } from "../sniff/staleCleanAir.js";
import { steadiness } from "../sniff/steadiness.js";
import { beginCheck, goOnUnsteady, interrupt, linkBack } from "./checkInterrupted.js";
import type {
  CheckEffect,
  CheckEvent,
  CheckState,
  CheckStep,
  Gathered,
  RunningState,
  TimedSweep,
} from "./checkState.js";
import {
  phaseOf,
  nothingGathered,
  sniffFrom,
  withAir,
  withCleanAir,
  withHeadspace,
  withLoss,
} from "./gathered.js";

/** After so long in air that does not settle, the app says so and asks what to do (common practice: minutes). */
export const STEADY_LIMIT_MS = 180_000;
/**
 * A baseline that was steady so long ago is taken anew before the plate, at half the age at which a finding refuses it:
 * the count-down and the hand's way need time too. Common practice.
 */
export const STEADY_KEPT_MS = STALE_CLEAN_AIR_MS / 2;

const stay = (state: CheckState): CheckStep => ({ state, effects: [] });
const step = (state: CheckState, ...effects: CheckEffect[]): CheckStep => ({ state, effects });

/** Where every check starts, and where cancelling leads. */
export const IDLE: CheckState = { phase: "idle" };

/**
 * The next state of a check. Events that do not belong to a phase change nothing.
 *
 * @param state - where the check stands
 * @param event - what happened; times in it are the sniffer's own clock
 */
export function checkFlow(state: CheckState, event: CheckEvent): CheckStep {
  if (event.kind === "begin") return beginCheck(event.subject);
  if (event.kind === "cancel") return cancel(state);
  switch (state.phase) {
    case "idle":
      return event.kind === "reopen"
        ? stay({ phase: "done", sniff: event.sniff, finding: event.finding })
        : stay(state);
    case "done":
      return stay(state);
    case "interrupted":
      return whileInterrupted(state, event);
    case "headspace":
      return event.kind === "interrupted" ? interrupt(state, event.cause) : whileOverPlate(state, event);
    default:
      return event.kind === "interrupted" ? interrupt(state, event.cause) : beforePlate(state, event);
  }
}

function cancel(state: CheckState): CheckStep {
  if (state.phase === "idle") return stay(state);
  // The check let go of the sniffer when it ended: leaving it must not stop the purge.
  if (state.phase === "done") return stay(IDLE);
  return step(IDLE, { kind: "stopSweeps" }, { kind: "keepAwake", on: false });
}

type BeforePlate = Exclude<RunningState, { phase: "headspace" }>;
type OverPlate = Extract<CheckState, { phase: "headspace" }>;
type Interrupted = Extract<CheckState, { phase: "interrupted" }>;

function beforePlate(state: BeforePlate, event: CheckEvent): CheckStep {
  switch (event.kind) {
    case "warmUp":
      return warmUp(state, event.leftMs);
    case "air":
      return stay({ ...state, gathered: withAir(state.gathered, "cleanAirReading", event.reading) });
    case "sweepsLost":
      return stay({ ...state, gathered: withLoss(state.gathered, event.count) });
    case "sweep":
      return state.phase === "warming" ? stay(state) : cleanAirSweep(state, event.sweep);
    case "getReady":
      return getReady(state);
    case "overPlateNow":
      return state.phase === "overPlate" ? moveOverPlate(state.gathered) : stay(state);
    default:
      return stay(state);
  }
}

function warmUp(state: BeforePlate, leftMs: number): CheckStep {
  if (leftMs > 0) {
    const warmUpMs = state.phase === "warming" ? Math.max(state.warmUpMs, leftMs) : leftMs;
    const fresh = nothingGathered(state.gathered.subject);
    const gathered = { ...fresh, cleanAirReading: state.gathered.cleanAirReading };
    return stay({ phase: "warming", gathered, warmUpLeftMs: leftMs, warmUpMs });
  }
  if (state.phase !== "warming") return stay(state);
  return step(
    { phase: "cleanAir", gathered: state.gathered, steadiness: steadiness(phaseOf([])), sinceMs: null },
    { kind: "announce", phase: "cleanAir" },
  );
}

function cleanAirSweep(state: Exclude<BeforePlate, { phase: "warming" }>, sweep: TimedSweep): CheckStep {
  const gathered = withCleanAir(state.gathered, sweep);
  const now = steadiness(phaseOf(gathered.cleanAir));
  if (state.phase === "overPlate") {
    // Steam may reach the sniffer before the tap: the steady window stays the baseline and only grows old.
    if (state.countingDown) return stay(state);
    if (now.steady) return stay({ ...state, gathered, steadyAtMs: sweep.atMs });
    const isOld = sweep.atMs - state.steadyAtMs > STEADY_KEPT_MS;
    // Who went on in air that never settles is not sent back to wait for it.
    return isOld && !state.gathered.flags.includes("cleanAirUnsteady")
      ? zeroAgain(state, sweep)
      : stay(state);
  }
  if (now.steady) {
    return step(
      { phase: "overPlate", gathered, steadyAtMs: sweep.atMs, countingDown: false },
      { kind: "announce", phase: "overPlate" },
    );
  }
  const sinceMs = state.sinceMs ?? sweep.atMs;
  const next = { ...state, gathered, steadiness: now, sinceMs };
  return sweep.atMs - sinceMs > STEADY_LIMIT_MS ? interrupt(next, "neverSteady") : stay(next);
}

/** The baseline has grown old and the air is no longer as it was: another is taken, from this sweep on. */
function zeroAgain({ gathered }: BeforePlate, sweep: TimedSweep): CheckStep {
  const fresh = withCleanAir({ ...gathered, cleanAir: [] }, sweep);
  const now = steadiness(phaseOf(fresh.cleanAir));
  return step(
    { phase: "cleanAir", gathered: fresh, steadiness: now, sinceMs: sweep.atMs },
    { kind: "announce", phase: "cleanAir" },
  );
}

function getReady(state: BeforePlate): CheckStep {
  if (state.phase !== "overPlate" || state.countingDown) return stay(state);
  return step({ ...state, countingDown: true }, { kind: "countDown" });
}

function moveOverPlate(gathered: Gathered): CheckStep {
  return step(
    { phase: "headspace", gathered, straddling: true, elapsedMs: 0, live: null, settled: false },
    { kind: "announce", phase: "headspace" },
  );
}

function whileOverPlate(state: OverPlate, event: CheckEvent): CheckStep {
  switch (event.kind) {
    case "sweep":
      return headspaceSweep(state, event.sweep);
    case "air":
      return stay({ ...state, gathered: withAir(state.gathered, "headspaceReading", event.reading) });
    case "sweepsLost":
      return stay({ ...state, gathered: withLoss(state.gathered, event.count) });
    case "assessed":
      return assessed(state, event);
    case "finishNow":
      return assessLast(state);
    default:
      return stay(state);
  }
}

function headspaceSweep(state: OverPlate, sweep: TimedSweep): CheckStep {
  if (state.straddling) return stay({ ...state, straddling: false });
  const gathered = withHeadspace(state.gathered, sweep);
  const elapsedMs = sweep.atMs - (gathered.headspace[0]?.atMs ?? sweep.atMs);
  const sniff = sniffFrom(gathered);
  if (sniff === null) return stay(state);
  const last = elapsedMs >= gathered.subject.headspaceLimitMs;
  return step({ ...state, gathered, elapsedMs }, { kind: "assess", sniff, last });
}

function assessLast(state: OverPlate | Interrupted): CheckStep {
  const sniff = sniffFrom(state.gathered);
  return sniff === null ? stay(state) : step(state, { kind: "assess", sniff, last: true });
}

function assessed(
  state: OverPlate | Interrupted,
  event: Extract<CheckEvent, { kind: "assessed" }>,
): CheckStep {
  if (!event.last && !event.settled) {
    return state.phase === "headspace"
      ? stay({ ...state, live: event.finding, settled: false })
      : stay(state);
  }
  return step(
    { phase: "done", sniff: event.sniff, finding: event.finding },
    { kind: "purge" },
    { kind: "keepAwake", on: false },
    { kind: "announce", phase: "done" },
  );
}

function whileInterrupted(state: Interrupted, event: CheckEvent): CheckStep {
  if (event.kind === "finishNow" && state.usable) return assessLast(state);
  if (event.kind === "assessed") return assessed(state, event);
  if (event.kind === "linkBack") return linkBack(state, event.run) ?? stay(state);
  // A heater that failed is told over whatever else stopped the check: what was gathered rests on it.
  if (event.kind === "interrupted" && event.cause === "snifferFault" && state.cause !== "snifferFault")
    return interrupt({ ...state.before, gathered: state.gathered }, "snifferFault");
  if (event.kind === "goOnUnsteady" && state.cause === "neverSteady") return goOnUnsteady(state);
  return stay(state);
}
