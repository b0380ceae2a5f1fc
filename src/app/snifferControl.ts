/** Pairs a sniffer and sends it commands. State is a signal; what a check must know is passed on. */
import { signal, type ReadonlySignal } from "@preact/signals";
import type { Result } from "../kernel/result.js";
import type { CheckEvent } from "../flows/checkState.js";
import type { SnifferFailure, SnifferState } from "../flows/snifferState.js";
import type { CommandOutcome } from "./sendCommand.js";
import type { Dial } from "./snifferConnection.js";
import type { SnifferLine } from "./snifferLine.js";
import { untilHere } from "./pieces.js";

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
  /** Loads what speaks with a sniffer, so that the first tap need not wait for it. Never rejects. */
  warmUp(): Promise<void>;
  pair(source: SnifferSource): Promise<void>;
  /** Connects again to the sniffer that was lost, without the chooser; one try, given up where the signal says so. */
  reconnect(signal?: AbortSignal): Promise<void>;
  disconnect(): void;
  /** Begins a run of sweeps. */
  startSweeps(): Promise<CommandOutcome>;
  stopSweeps(): Promise<void>;
  purge(): Promise<CommandOutcome>;
  /** Gets all that a check would have to know, whether one runs or not; the answer ends it. */
  onCheckEvent(listener: (event: CheckEvent) => void): () => void;
}

export function createSnifferControl(): SnifferControl {
  const state = signal<SnifferState>({ kind: "none" });
  const deviceId = signal<string | null>(null);
  const listeners = new Set<(event: CheckEvent) => void>();
  let connectAgain: ((signal?: AbortSignal) => Promise<void>) | null = null;
  let line: SnifferLine | null = null;

  async function loadLine(): Promise<SnifferLine> {
    const { createSnifferLine } = await untilHere(() => import("./snifferLine.js"));
    line ??= createSnifferLine(state, (event) => listeners.forEach((listen) => listen(event)));
    return line;
  }

  async function pair(source: SnifferSource): Promise<void> {
    const before = state.value;
    if (before.kind === "choosing" || before.kind === "connecting") return;
    // The virtual sniffer has no chooser: nothing is to be looked for in a list.
    state.value = source.virtual ? { kind: "connecting", name: "", virtual: true } : { kind: "choosing" };
    // The chooser first: the browser opens it only right after a tap.
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
    const opened = await loadLine();
    opened.drop();
    deviceId.value = chosen.value.deviceId;
    connectAgain = (signal) => opened.connect(name, source.virtual, dial, signal);
    await connectAgain();
  }

  return {
    state,
    deviceId,
    warmUp: () => loadLine().then(nothing, nothing),
    pair,
    reconnect: async (signal) => {
      if (state.value.kind === "lost") await connectAgain?.(signal);
    },
    disconnect: () => {
      line?.drop();
      connectAgain = null;
      state.value = { kind: "none" };
    },
    startSweeps: async () => (await line?.startSweeps()) ?? "lost",
    stopSweeps: async () => line?.stopSweeps(),
    purge: async () => (await line?.purge()) ?? "lost",
    onCheckEvent: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

const nothing = (): void => undefined;
