/** One connection at a time: dials, listens, polls what is not notified, notices loss. */
import type { Signal } from "@preact/signals";
import type { CharacteristicAddress, Link } from "../kernel/link.js";
import { err, ok, type Result } from "../kernel/result.js";
import type { CheckEvent } from "../flows/checkState.js";
import type { ConnectedSniffer, SnifferFailure, SnifferState } from "../flows/snifferState.js";
import type { ControlCommand } from "../profile/control.js";
import { STATUS } from "../profile/uuids.js";
import { openSniffer } from "./connectSniffer.js";
import { createEar } from "./ear.js";
import { makeGood, sendCommand, type CommandOutcome } from "./sendCommand.js";
import { createSnifferInbox, type SnifferInbox } from "./snifferInbox.js";

/** How often a reading that is not notified is asked for. */
const POLL_MS = 5_000;

/** Connects; gives up where the signal says so. */
export type Dial = (signal?: AbortSignal) => Promise<Result<Link, SnifferFailure>>;

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
  const inbox = createSnifferInbox(state, tell);
  const ear = createEar(inbox);
  let polling: ReturnType<typeof setInterval> | undefined;
  /** A command that a loss cut off: made good once the sniffer is back. */
  let cutOff: ControlCommand | null = null;
  /** Counts connections: an answer to an older one is not used. */
  let attempt = 0;

  function lost(): void {
    clearInterval(polling);
    ear.close();
    const sniffer = inbox.ready();
    if (sniffer === null) return;
    state.value = { kind: "lost", sniffer, failure: null };
    tell({ kind: "interrupted", cause: "linkLost" });
  }

  async function listen(opened: Link, virtual: boolean): Promise<Result<void, SnifferFailure>> {
    const isHeld = () => ear.link() === opened;
    ear.open(opened);
    inbox.clear();
    opened.onLost(() => {
      if (isHeld()) lost();
    });
    const found = await openSniffer(opened, virtual, (address, bytes) => {
      if (isHeld()) ear.hear(address, bytes);
    });
    if (!isHeld()) return err({ kind: "unreachable" });
    if (!found.ok) return found;
    const { sniffer, polled } = found.value;
    inbox.open(sniffer);
    polling = setInterval(() => void readAll(opened, [...polled, ...unheard(inbox)], inbox), POLL_MS);
    const unfinished = cutOff;
    cutOff = null;
    if (unfinished !== null) await makeGood(opened, unfinished, sniffer.status);
    return ok(undefined);
  }

  function hangUp(): void {
    attempt += 1;
    clearInterval(polling);
    ear.close()?.close();
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
      if (dialled.ok && dialled.value !== ear.link()) dialled.value.close();
      return;
    }
    if (opened.ok) return;
    hangUp();
    const failure = opened.error;
    state.value = before.kind === "lost" ? { ...before, failure } : { kind: "failed", failure };
  }

  return {
    ready: inbox.ready,
    change: inbox.change,
    connect,
    drop: () => {
      cutOff = null;
      hangUp();
    },
    command: async (what) => {
      cutOff = null;
      const outcome = await sendCommand(ear.link(), what);
      if (outcome === "lost") cutOff = what;
      return outcome;
    },
  };
}

/** STATUS while it warms up: a check must not wait for the one word of its end if that was lost. */
const unheard = (inbox: SnifferInbox) => ((inbox.ready()?.status?.warmUpLeftMs ?? 0) > 0 ? [STATUS] : []);

async function readAll(
  link: Link,
  addresses: readonly CharacteristicAddress[],
  inbox: SnifferInbox,
): Promise<void> {
  for (const address of addresses) {
    const value = await link.read(address);
    if (value.ok) inbox.take(address, value.value);
  }
}
