/** Pairs a sniffer and sends it commands. State is a signal; what a check must know is passed on. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Result } from "../kernel/result.js";
import type { CheckEvent } from "../flows/checkState.js";
import { beginRun, endRun } from "../flows/snifferBytes.js";
import type { SnifferFailure, SnifferState } from "../flows/snifferState.js";
import { createSnifferConnection, type Dial, type SnifferConnection } from "./snifferConnection.js";

/** How a sniffer is found: the browser's chooser, or the virtual one. */
export interface SnifferSource {
  readonly virtual: boolean;
  /** null: the user changed their mind, and nothing is to be said. */
  choose(): Promise<Result<{ readonly name: string; readonly dial: Dial } | null, SnifferFailure>>;
}

export interface SnifferControl {
  readonly state: ReadonlySignal<SnifferState>;
  pair(source: SnifferSource): Promise<void>;
  /** Connects again to the sniffer that was lost, without the chooser. */
  reconnect(): Promise<void>;
  disconnect(): void;
  /** Begins a run of sweeps. False if the sniffer did not take the command. */
  startSweeps(): Promise<boolean>;
  stopSweeps(): Promise<void>;
  purge(): Promise<void>;
  /** Gets what a running check must know. */
  onCheckEvent(listener: (event: CheckEvent) => void): void;
}

export function createSnifferControl(): SnifferControl {
  const state = signal<SnifferState>({ kind: "none" });
  let listener: (event: CheckEvent) => void = () => undefined;
  let connectAgain: (() => Promise<void>) | null = null;
  const connection = createSnifferConnection(state, (event) => listener(event));

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
    connectAgain = () => connection.connect(name, source.virtual, dial);
    await connectAgain();
  }

  return {
    state,
    pair,
    reconnect: async () => {
      if (state.value.kind === "lost") await connectAgain?.();
    },
    disconnect: () => {
      connection.drop();
      connectAgain = null;
      state.value = { kind: "none" };
    },
    startSweeps: () => startSweeps(connection),
    stopSweeps: () => stopSweeps(connection),
    purge: async () => {
      await stopSweeps(connection);
      await connection.command({ kind: "purge" });
    },
    onCheckEvent: (next) => {
      listener = next;
    },
  };
}

async function startSweeps(connection: SnifferConnection): Promise<boolean> {
  // A purge that is still running would refuse the start.
  await connection.command({ kind: "stop" });
  const sniffer = connection.ready();
  if (sniffer === null) return false;
  const begun = beginRun(sniffer);
  connection.change(begun);
  return connection.command({ kind: "start", run: begun.lastRun });
}

async function stopSweeps(connection: SnifferConnection): Promise<void> {
  await connection.command({ kind: "stop" });
  const sniffer = connection.ready();
  if (sniffer !== null) connection.change(endRun(sniffer).sniffer);
}
