/** How far getting a lost sniffer back has come. */

/** Tries before the app gives up: the waits come to about a minute, as long as a sniffer keeps its run (PROFILE.md 2). */
export const MOST_TRIES = 8;

/** Why nothing is tried although the sniffer is lost. */
export type PauseCause =
  | "hidden" // the page is out of sight: a radio in the pocket drains the phone and helps nobody
  | "radioOff"; // the phone's Bluetooth is off or not allowed

export type ReconnectState =
  | { readonly kind: "off" } // nothing is lost
  | { readonly kind: "waiting"; readonly tries: number; readonly dueAtMs: number }
  | { readonly kind: "trying"; readonly tries: number }
  | { readonly kind: "paused"; readonly cause: PauseCause }
  | { readonly kind: "gaveUp"; readonly why: "bound" | "person" | "willNotMend" };
