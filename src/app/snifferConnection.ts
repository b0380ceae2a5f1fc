/** One connection at a time: dials, listens, polls what is not notified, notices loss, takes up a run that went on. */
import type { Signal } from "@preact/signals";
import type { CharacteristicAddress, Link } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { CheckEvent } from "../flows/checkState.js";
import { commandTook } from "../flows/commandTook.js";
import { rejoined, runAfterLoss } from "../flows/resumeSniff.js";
import { takeBytes } from "../flows/snifferBytes.js";
import type { ConnectedSniffer, SnifferFailure, SnifferState } from "../flows/snifferState.js";
import { encodeControl, type ControlCommand } from "../profile/control.js";
import { decodeStatus } from "../profile/status.js";
import { CONTROL, STATUS } from "../profile/uuids.js";
import { openSniffer } from "./connectSniffer.js";

/** How often a reading that is not notified is asked for. */
const POLL_MS = 5_000;

/** Connects; gives up where the signal says so. */
export type Dial = (signal?: AbortSignal) => Promise<Result<Link, SnifferFailure>>;

/** `lost`: the link went before the sniffer's answer came. */
export type CommandOutcome = "taken" | "refused" | "lost";

export interface SnifferConnection {
  /** A sniffer that was lost stays lost on screen until it is ready again. */
  connect(name: string, virtual: boolean, dial: Dial, signal?: AbortSignal): Promise<void>;
  drop(): void;
  ready(): ConnectedSniffer | null;
  /** Replaces what is known of the connected sniffer; nothing happens where none is. */
  change(next: ConnectedSniffer): void;
  command(what: ControlCommand): Promise<CommandOutcome>;
}

export function createSnifferConnection(
  state: Signal<SnifferState>,
  tell: (event: CheckEvent) => void,
): SnifferConnection {
  let link: Link | null = null;
  let polling: ReturnType<typeof setInterval> | undefined;
  /** A command that a loss cut off: made good once the sniffer is back. */
  let cutOff: ControlCommand | null = null;
  /** Counts connections: an answer to an older one is not used. */
  let attempt = 0;
  /** What came while the sniffer was still being opened, in order. */
  let early: { readonly address: CharacteristicAddress; readonly bytes: Uint8Array }[] = [];

  const ready = () => (state.value.kind === "ready" ? state.value.sniffer : null);
  const change = (next: ConnectedSniffer) => {
    if (state.value.kind === "ready") state.value = { kind: "ready", sniffer: next };
  };

  function take(address: CharacteristicAddress, bytes: Uint8Array): void {
    const sniffer = ready();
    if (sniffer === null) return;
    const step = takeBytes(sniffer, address, bytes);
    change(step.sniffer);
    step.events.forEach(tell);
  }

  async function readAll(addresses: readonly CharacteristicAddress[]): Promise<void> {
    for (const address of addresses) {
      const value = await link?.read(address);
      if (value?.ok) take(address, value.value);
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
    early = [];
    opened.onLost(() => {
      if (link === opened) lost();
    });
    const found = await openSniffer(opened, virtual, (address, bytes) => {
      if (ready() === null) early.push({ address, bytes });
      else take(address, bytes);
    });
    if (link !== opened) return err({ kind: "unreachable" });
    if (!found.ok) return found;
    const { sniffer, polled } = found.value;
    settle(sniffer);
    if (polled.length > 0) polling = setInterval(() => void readAll(polled), POLL_MS);
    if (cutOff !== null) await makeGood(cutOff, sniffer);
    return ok(undefined);
  }

  /** A run that went on while the link was down is taken up, and a check that stands still is told what became of it. */
  function settle(opened: ConnectedSniffer): void {
    const before = state.value;
    const run = before.kind === "lost" ? runAfterLoss(before.sniffer, opened) : null;
    const sniffer = before.kind === "lost" && run !== null ? rejoined(before.sniffer, opened, run) : opened;
    state.value = { kind: "ready", sniffer };
    if (run !== null) tell({ kind: "linkBack", run });
    const waiting = early;
    early = [];
    for (const { address, bytes } of waiting) take(address, bytes);
  }

  /** A start is made good by whoever asked for sweeps: only they know the run that is wanted now. */
  async function makeGood(command: ControlCommand, sniffer: ConnectedSniffer): Promise<void> {
    cutOff = null;
    if (command.kind === "start" || sniffer.status === null) return;
    if (!commandTook(sniffer.status, command)) await link?.write(CONTROL, encodeControl(command));
  }

  function hangUp(): void {
    attempt += 1;
    clearInterval(polling);
    const open = link;
    link = null;
    open?.close();
  }

  function drop(): void {
    cutOff = null;
    hangUp();
  }

  async function connect(name: string, virtual: boolean, dial: Dial, signal?: AbortSignal): Promise<void> {
    const before = state.value;
    attempt += 1;
    const mine = attempt;
    const giveUp = () => {
      if (mine === attempt) hangUp();
    };
    signal?.addEventListener("abort", giveUp);
    if (before.kind !== "lost") state.value = { kind: "connecting", name, virtual };
    const dialled = await dial(signal);
    const opened = mine === attempt && dialled.ok ? await listen(dialled.value, virtual) : dialled;
    signal?.removeEventListener("abort", giveUp);
    if (mine !== attempt) {
      // Given up, or another was chosen meanwhile: what it came to is no longer wanted.
      if (dialled.ok && dialled.value !== link) dialled.value.close();
      return;
    }
    if (opened.ok) return;
    hangUp();
    const failure = opened.error;
    state.value = before.kind === "lost" ? { ...before, failure } : { kind: "failed", failure };
  }

  /** null where the status could not be read. */
  async function took(what: ControlCommand): Promise<boolean | null> {
    const told = await link?.read(STATUS);
    const status = told?.ok ? decodeStatus(told.value) : null;
    return status?.ok ? commandTook(status.value, what) : null;
  }

  async function command(what: ControlCommand): Promise<CommandOutcome> {
    cutOff = null;
    for (let triesLeft = 1; ; triesLeft -= 1) {
      const written = await link?.write(CONTROL, encodeControl(what));
      if (written?.ok) return "taken";
      if (written === undefined || written.error.kind === "lost") {
        cutOff = what;
        return "lost";
      }
      // The answer to the write may have been lost though the sniffer obeyed; a second write of it would do no harm.
      if (await took(what)) return "taken";
      if (written.error.kind !== "unexpected" || triesLeft === 0) return "refused";
    }
  }

  return {
    ready,
    change,
    drop,
    command,
    connect,
  };
}
