/** What a link notifies, in order; a STATUS that would stop a check is read once more before it is believed. */
import { needsSecondLook } from "../flows/snifferBytes.js";
import type { CharacteristicAddress, Link } from "../kernel/link.js";
import type { SnifferInbox } from "./snifferInbox.js";

export interface Ear {
  /** Listens to this link from now on. */
  open(link: Link): void;
  /** The link it listens to; null where there is none. */
  link(): Link | null;
  hear(address: CharacteristicAddress, bytes: Uint8Array): void;
  /**
   * Listens no more: what came counts, what was still asked for does not.
   *
   * @returns the link it listened to
   */
  close(): Link | null;
}

interface Heard {
  readonly address: CharacteristicAddress;
  readonly bytes: Uint8Array;
}

export function createEar(inbox: Pick<SnifferInbox, "ready" | "take">): Ear {
  let listening: Link | null = null;
  /** What came while STATUS is read again, so that no finding overtakes a fault; null where it is not. */
  let waiting: readonly Heard[] | null = null;

  function hear(address: CharacteristicAddress, bytes: Uint8Array): void {
    if (waiting !== null) {
      waiting = [...waiting, { address, bytes }];
      return;
    }
    const link = listening;
    const sniffer = inbox.ready();
    if (link === null || sniffer === null || !needsSecondLook(sniffer, address, bytes))
      return inbox.take(address, bytes);
    waiting = [];
    void link.read(address).then((again) => {
      if (listening !== link) return;
      const held = release();
      inbox.take(address, again.ok ? again.value : bytes);
      held.forEach((one) => hear(one.address, one.bytes));
    });
  }

  function release(): readonly Heard[] {
    const held = waiting ?? [];
    waiting = null;
    return held;
  }

  return {
    open: (link) => {
      listening = link;
    },
    link: () => listening,
    hear,
    close: () => {
      const link = listening;
      listening = null;
      release().forEach(({ address, bytes }) => inbox.take(address, bytes));
      return link;
    },
  };
}
