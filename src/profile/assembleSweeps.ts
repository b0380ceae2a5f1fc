/** Notifications of SWEEP to whole sweeps, with every loss noticed. PROFILE.md section 8. */
import { checkWhole } from "./bytes.js";
import { LAST_RUN } from "./control.js";
import {
  NO_FRAMES_YET,
  releaseAll,
  takeFrame,
  type FrameOrder,
  type OrderFault,
  type OrderStep,
} from "./frameOrder.js";
import {
  gatherFrame,
  giveUpOpenSweep,
  NOTHING_GATHERED,
  type Gathering,
  type SweepFault,
} from "./gatherSweeps.js";
import { MOST_CHANNELS } from "./layout.js";
import { decodeSweepFrame, type FrameError, type Sweep, type SweepFrame } from "./sweepFrame.js";

/** What went wrong on the way. A sweep is delivered whole or not at all, and what is not delivered is named here. */
export type LinkFault =
  | OrderFault
  | SweepFault
  | { readonly kind: "corruptFrame"; readonly error: FrameError } // not used; found missing again as `framesLost`
  | { readonly kind: "otherRun"; readonly run: number } // belongs to another start command: not used
  | { readonly kind: "wrongChannels" } // more or fewer channels than LAYOUT says: read LAYOUT again
  | { readonly kind: "restarted" }; // counts or time began anew in mid-run, as after loss of power: start the sniff again

/** Sweeps under way in one run. */
export interface SweepAssembly {
  readonly run: number;
  readonly channelCount: number;
  readonly order: FrameOrder;
  readonly gathering: Gathering;
}

export interface AssemblyStep {
  readonly state: SweepAssembly;
  /** In the order they were made; `counter` and `atMs` unwrapped from the run's first frame. */
  readonly sweeps: readonly Sweep[];
  readonly faults: readonly LinkFault[];
}

/**
 * Begins one run. Keep the state over a reconnection within the run: what was missed meanwhile is then counted.
 *
 * @param run - the number sent with the start command, 1 to 255
 * @param channelCount - channels in LAYOUT, 1 to 64
 * @throws {RangeError} outside those ranges
 */
export function beginSweeps(run: number, channelCount: number): SweepAssembly {
  checkWhole("run", run, 1, LAST_RUN);
  checkWhole("number of channels", channelCount, 1, MOST_CHANNELS);
  return { run, channelCount, order: NO_FRAMES_YET, gathering: NOTHING_GATHERED };
}

/** Takes one notification of SWEEP. Never throws, whatever the bytes. */
export function assembleSweeps(state: SweepAssembly, bytes: Uint8Array): AssemblyStep {
  const nothing = (fault: LinkFault): AssemblyStep => ({ state, sweeps: [], faults: [fault] });
  const decoded = decodeSweepFrame(bytes);
  if (!decoded.ok) return nothing({ kind: "corruptFrame", error: decoded.error });
  const frame = decoded.value;
  if (frame.run !== state.run) return nothing({ kind: "otherRun", run: frame.run });
  if (!fitsLayout(frame, state.channelCount)) return nothing({ kind: "wrongChannels" });
  const step = takeFrame(state.order, frame, state.channelCount);
  return step === "restarted" ? startOver(state, bytes) : gather(state, step);
}

/** Ends a run: what waited for a late frame is let through, and what is still open is named as lost. */
export function finishSweeps(state: SweepAssembly): AssemblyStep {
  const drained = gather(state, releaseAll(state.order));
  const { gathering, faults } = giveUpOpenSweep(drained.state.gathering);
  return {
    state: { ...drained.state, gathering },
    sweeps: drained.sweeps,
    faults: [...drained.faults, ...faults],
  };
}

function startOver(state: SweepAssembly, bytes: Uint8Array): AssemblyStep {
  const finished = finishSweeps(state);
  const fresh = assembleSweeps(beginSweeps(state.run, state.channelCount), bytes);
  return {
    state: fresh.state,
    sweeps: [...finished.sweeps, ...fresh.sweeps],
    faults: [...finished.faults, { kind: "restarted" }, ...fresh.faults],
  };
}

function gather(state: SweepAssembly, step: OrderStep): AssemblyStep {
  let gathering = state.gathering;
  const sweeps: Sweep[] = [];
  const faults: LinkFault[] = [...step.faults];
  for (const frame of step.frames) {
    const gathered = gatherFrame(gathering, frame);
    gathering = gathered.gathering;
    sweeps.push(...gathered.sweeps);
    faults.push(...gathered.faults);
  }
  return { state: { ...state, order: step.order, gathering }, sweeps, faults };
}

function fitsLayout({ firstChannel, ohm, last }: SweepFrame, channelCount: number): boolean {
  const end = firstChannel + ohm.length;
  return last ? end === channelCount : end < channelCount;
}
