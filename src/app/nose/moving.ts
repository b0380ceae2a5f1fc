/** Moving the nose in use to the connected sniffer: gathers what both sniffed, and lets the worker work it out. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Channel } from "../../kernel/channel.js";
import type { Nose } from "../../nose/nose.js";
import type { GroupComparison } from "../../nose/report.js";
import { immovable } from "../../transfer/immovable.js";
import type { TransferOutcome, TransferPlate } from "../../views/transferView.js";
import type { AppModel } from "../appModel.js";
import { nowIso } from "../ports.js";
import { readShared } from "./readShared.js";

export interface WorkedOut {
  readonly outcome: TransferOutcome;
  readonly plates: readonly TransferPlate[];
  /** Readings of the check jar on the connected sniffer that have one of the taught sniffer beside them. */
  readonly jarReadings: number;
  readonly moved: { readonly nose: Nose; readonly compared: readonly GroupComparison[] } | null;
}

export interface Moving {
  readonly state: ReadonlySignal<WorkedOut>;
  /** Works it out, from the beginning. */
  start(): Promise<void>;
  /** The person's word: it stands still until it is started again. */
  stop(): void;
  /** The page is left. */
  leave(): void;
}

type Sniffer = { readonly id: string; readonly channels: readonly Channel[] };

const NOTHING: WorkedOut = {
  outcome: { kind: "working", done: null },
  plates: [],
  jarReadings: 0,
  moved: null,
};

export function createMoving(app: AppModel): Moving {
  // What is wanting is known at once: a word of work under way first would move the page.
  const state = signal<WorkedOut>({ ...NOTHING, outcome: wanting(app) ?? NOTHING.outcome });
  let round = 0;
  let computing = false;

  function leave(): void {
    round += 1;
    if (computing) app.teachers.abandon();
    computing = false;
  }

  async function start(): Promise<void> {
    leave();
    const own = round;
    const missing = wanting(app);
    state.value = { ...NOTHING, outcome: missing ?? NOTHING.outcome };
    const tell = (outcome: TransferOutcome, more: Partial<WorkedOut> = {}) => {
      if (own === round) state.value = { ...state.value, ...more, outcome };
    };
    const nose = app.noses.current.value;
    const sniffer = connectedSniffer(app);
    if (missing !== null || nose === null || sniffer === null) return;
    const gathered = await readShared(app.ports.store, nose.sniffer.id, sniffer.id);
    if (gathered === null) return tell({ kind: "storage" });
    const { samples, jarSniffs, ...seen } = gathered;
    tell({ kind: "working", done: null }, seen);
    computing = true;
    const options = { id: app.ports.newId(), name: nose.name, transferredAt: nowIso(app.ports), sniffer };
    const job = { nose, samples, options: { ...options, jarReadings: jarSniffs } };
    const answer = await app.teachers.transfer(job, (done) => tell({ kind: "working", done }));
    if (own !== round) return;
    computing = false;
    if (!answer.ok) return tell(answer.error.kind === "cancelled" ? { kind: "stopped" } : answer.error);
    const { nose: moved, compared } = answer.value;
    const { transfer, report } = moved;
    if (transfer === undefined) return tell({ kind: "badNose" });
    tell(
      { kind: "moved", gain: transfer.gain, evidencePlates: report.folds },
      { moved: { nose: moved, compared } },
    );
  }

  return {
    state,
    start,
    stop: () => {
      leave();
      state.value = { ...state.value, outcome: { kind: "stopped" } };
    },
    leave,
  };
}

/** What must be there before anything can be worked out. */
function wanting(app: AppModel): TransferOutcome | null {
  const [nose, sniffer] = [app.noses.current.value, connectedSniffer(app)];
  if (nose === null) return { kind: "noNose" };
  return sniffer === null ? { kind: "noSniffer" } : immovable(nose, sniffer);
}

/** What the connected sniffer says of itself; null while none is connected. */
export function connectedSniffer(app: AppModel): Sniffer | null {
  const { value } = app.sniffers.state;
  if (value.kind !== "ready") return null;
  const { snifferId, channels } = value.sniffer.layout;
  return { id: snifferId, channels };
}
