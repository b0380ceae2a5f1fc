/** One connection at a time: dials, listens, polls what is not notified, notices loss. */
import type { Signal } from "@preact/signals";
import type { CharacteristicAddress, Link } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { CheckEvent } from "../flows/checkState.js";
import { takeBytes } from "../flows/snifferBytes.js";
import type { ConnectedSniffer, SnifferFailure, SnifferState } from "../flows/snifferState.js";
import { encodeControl, type ControlCommand } from "../profile/control.js";
import { CONTROL } from "../profile/uuids.js";
import { openSniffer } from "./connectSniffer.js";

/** How often a reading that is not notified is asked for. */
const POLL_MS = 5_000;

export type Dial = () => Promise<Result<Link, SnifferFailure>>;

export interface SnifferConnection {
  connect(name: string, virtual: boolean, dial: Dial): Promise<void>;
  drop(): void;
  ready(): ConnectedSniffer | null;
  /** Replaces what is known of the connected sniffer; nothing happens where none is. */
  change(next: ConnectedSniffer): void;
  command(what: ControlCommand): Promise<boolean>;
}

export function createSnifferConnection(
  state: Signal<SnifferState>,
  tell: (event: CheckEvent) => void,
): SnifferConnection {
  let link: Link | null = null;
  let polling: ReturnType<typeof setInterval> | undefined;

  const ready = () => (state.value.kind === "ready" ? state.value.sniffer : null);
  const change = (next: ConnectedSniffer) => {
    if (state.value.kind === "ready") state.value = { kind: "ready", sniffer: next };
  };

  function onBytes(address: CharacteristicAddress, bytes: Uint8Array): void {
    const sniffer = ready();
    if (sniffer === null) return;
    const step = takeBytes(sniffer, address, bytes);
    change(step.sniffer);
    step.events.forEach(tell);
  }

  async function readAll(addresses: readonly CharacteristicAddress[]): Promise<void> {
    for (const address of addresses) {
      const value = await link?.read(address);
      if (value?.ok) onBytes(address, value.value);
    }
  }

  function lost(): void {
    const sniffer = ready();
    clearInterval(polling);
    link = null;
    if (sniffer === null) return;
    state.value = { kind: "lost", sniffer, failure: null };
    tell({ kind: "interrupted", cause: "linkLost" });
  }

  async function listen(opened: Link, virtual: boolean): Promise<Result<void, SnifferFailure>> {
    link = opened;
    opened.onLost(() => {
      if (link === opened) lost();
    });
    const found = await openSniffer(opened, virtual, onBytes);
    if (link !== opened) return err({ kind: "unreachable" });
    if (!found.ok) return found;
    const { sniffer, polled } = found.value;
    state.value = { kind: "ready", sniffer };
    if (polled.length > 0) polling = setInterval(() => void readAll(polled), POLL_MS);
    return ok(undefined);
  }

  function drop(): void {
    clearInterval(polling);
    const open = link;
    link = null;
    open?.close();
  }

  return {
    ready,
    change,
    drop,
    connect: async (name, virtual, dial) => {
      const before = state.value;
      state.value = { kind: "connecting", name, virtual };
      const dialled = await dial();
      const opened = dialled.ok ? await listen(dialled.value, virtual) : dialled;
      if (opened.ok) return;
      drop();
      const failure = opened.error;
      state.value = before.kind === "lost" ? { ...before, failure } : { kind: "failed", failure };
    },
    command: async (what) => {
      const written = await link?.write(CONTROL, encodeControl(what));
      return written?.ok === true;
    },
  };
}
