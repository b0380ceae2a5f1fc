/** Pairs a sniffer and sends it commands. State is a signal; what a check must know is passed on. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Result } from "../kernel/result.js";
import type { CheckEvent } from "../flows/checkState.js";
import { beginRun, endRun } from "../flows/snifferBytes.js";
import type { SnifferFailure, SnifferState } from "../flows/snifferState.js";
import { makeInTurn } from "../radio/inTurn.js";
import type { CommandOutcome } from "./sendCommand.js";
import { createSnifferConnection, type Dial, type SnifferConnection } from "./snifferConnection.js";

/** How a sniffer is found: the browser's chooser, or the virtual one. */
export interface SnifferSource {
  readonly virtual: boolean;
  /** null: the user changed their mind, and nothing is to be said. */
  choose(): Promise<Result<ChosenSniffer | null, SnifferFailure>>;
}

export interface ChosenSniffer {
  readonly name: string;
  /** The browser's own id for it; null for the virtual one. */
  readonly deviceId: string | null;
  readonly dial: Dial;
}

export interface SnifferControl {
  readonly state: ReadonlySignal<SnifferState>;
  /** The browser's id of the sniffer chosen last; null for the virtual one, or where none was chosen. */
  readonly deviceId: ReadonlySignal<string | null>;
  pair(source: SnifferSource): Promise<void>;
  /** Connects again to the sniffer that was lost, without the chooser; one try, given up where the signal says so. */
  reconnect(signal?: AbortSignal): Promise<void>;
  disconnect(): void;
  /** Begins a run of sweeps. */
  startSweeps(): Promise<CommandOutcome>;
  stopSweeps(): Promise<void>;
  purge(): Promise<void>;
  /** Gets all that a check would have to know, whether one runs or not; the answer ends it. */
  onCheckEvent(listener: (event: CheckEvent) => void): () => void;
}

export function createSnifferControl(): SnifferControl {
  const state = signal<SnifferState>({ kind: "none" });
  const deviceId = signal<string | null>(null);
  const listeners = new Set<(event: CheckEvent) => void>();
  let connectAgain: ((signal?: AbortSignal) => Promise<void>) | null = null;
  const connection = createSnifferConnection(state, (event) => listeners.forEach((listen) => listen(event)));
  // A stop, a start and a purge are several writes each: one is done before the next begins.
  const inTurn = makeInTurn();

  async function pair(source: SnifferSource): Promise<void> {
    const before = state.value;
    if (before.kind === "choosing" || before.kind === "connecting") return;
    state.value = { kind: "choosing" };
    const chosen = await source.choose();
    if (!chosen.ok) {
      state.value = { kind: "failed", failure: chosen.error };
      return;
    }
    if (chosen.value === null) {
      state.value = before;
      return;
    }
    const { name, dial } = chosen.value;
    connection.drop();
    deviceId.value = chosen.value.deviceId;
    connectAgain = (signal) => connection.connect(name, source.virtual, dial, signal);
    await connectAgain();
  }

  return {
    state,
    deviceId,
    pair,
    reconnect: async (signal) => {
      if (state.value.kind === "lost") await connectAgain?.(signal);
    },
    disconnect: () => {
      connection.drop();
      connectAgain = null;
      state.value = { kind: "none" };
    },
    startSweeps: () => inTurn(() => startSweeps(connection)),
    stopSweeps: () => inTurn(() => stopSweeps(connection)),
    purge: () =>
      inTurn(async () => {
        await stopSweeps(connection);
        await connection.command({ kind: "purge" });
      }),
    onCheckEvent: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

async function startSweeps(connection: SnifferConnection): Promise<CommandOutcome> {
  // A purge that is still running would refuse the start.
  await connection.command({ kind: "stop" });
  const sniffer = connection.ready();
  if (sniffer === null) return "lost";
  const begun = beginRun(sniffer);
  connection.change(begun);
  return connection.command({ kind: "start", run: begun.lastRun });
}

async function stopSweeps(connection: SnifferConnection): Promise<void> {
  await connection.command({ kind: "stop" });
  const sniffer = connection.ready();
  if (sniffer !== null) connection.change(endRun(sniffer).sniffer);
}
