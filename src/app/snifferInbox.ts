/** What comes from the sniffer: bytes become its new state and what a check must know. */
import type { Signal } from "@preact/signals";
import type { CheckEvent } from "../flows/checkState.js";
import { rejoined, runAfterLoss } from "../flows/resumeSniff.js";
import { takeBytes } from "../flows/snifferBytes.js";
import type { ConnectedSniffer, SnifferState } from "../flows/snifferState.js";
import { tellsFault } from "../flows/tellsFault.js";
import type { CharacteristicAddress } from "../kernel/link.js";

export interface SnifferInbox {
  ready(): ConnectedSniffer | null;
  /** Replaces what is known of the connected sniffer; nothing happens where none is. */
  change(next: ConnectedSniffer): void;
  /** What comes while the sniffer is still being opened waits for `open`. */
  take(address: CharacteristicAddress, bytes: Uint8Array): void;
  /** Lets go of what waited: the connection it came over is no more. */
  clear(): void;
  /** A run that went on while the link was down is taken up, and a check that stands still is told what became of it. */
  open(opened: ConnectedSniffer): void;
}

export function createSnifferInbox(
  state: Signal<SnifferState>,
  tell: (event: CheckEvent) => void,
): SnifferInbox {
  let early: { readonly address: CharacteristicAddress; readonly bytes: Uint8Array }[] = [];
  const ready = () => (state.value.kind === "ready" ? state.value.sniffer : null);
  const change = (next: ConnectedSniffer) => {
    if (state.value.kind === "ready") state.value = { kind: "ready", sniffer: next };
  };

  function take(address: CharacteristicAddress, bytes: Uint8Array): void {
    const sniffer = ready();
    if (sniffer === null) {
      early.push({ address, bytes });
      return;
    }
    const step = takeBytes(sniffer, address, bytes);
    change(step.sniffer);
    step.events.forEach(tell);
  }

  return {
    ready,
    change,
    take,
    clear: () => {
      early = [];
    },
    open: (opened) => {
      const before = state.value;
      const run = before.kind === "lost" ? runAfterLoss(before.sniffer, opened) : null;
      const sniffer = before.kind === "lost" && run !== null ? rejoined(before.sniffer, opened, run) : opened;
      state.value = { kind: "ready", sniffer };
      if (run !== null) tell({ kind: "linkBack", run });
      if (opened.status !== null && tellsFault(opened.status))
        tell({ kind: "interrupted", cause: "snifferFault" });
      const waiting = early;
      early = [];
      for (const { address, bytes } of waiting) take(address, bytes);
    },
  };
}
