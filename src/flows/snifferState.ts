/** The sniffer as the app sees it: chosen, connected, its last words, its faults (types only). */
import type { AirReading } from "../kernel/air.js";
import type { TimedSweep } from "./checkState.js";
import type { SweepAssembly } from "../profile/assembleSweeps.js";
import type { LayoutError, SnifferLayout } from "../profile/layout.js";
import type { SnifferStatus } from "../profile/status.js";

/** How often the way from the sniffer to the phone failed, since connecting. */
export interface LinkHealth {
  readonly sweeps: number;
  readonly framesLost: number;
  readonly corruptFrames: number;
  readonly restarts: number;
  /** A standard reading that the standard prohibits, or of the wrong size: taken as missing. */
  readonly badReadings: number;
}

/** A sniffer whose layout has been read. */
export interface ConnectedSniffer {
  readonly name: string;
  readonly virtual: boolean;
  readonly layout: SnifferLayout;
  readonly maker: string | null;
  readonly model: string | null;
  readonly firmware: string | null;
  /** 0 to 100; null where the sniffer does not tell. */
  readonly batteryPct: number | null;
  readonly status: SnifferStatus | null;
  readonly air: AirReading;
  /** The newest readings of the air, oldest first, for telling whether its sensor lives. */
  readonly recentAir: readonly AirReading[];
  readonly lastRun: number;
  readonly assembly: SweepAssembly | null;
  readonly health: LinkHealth;
  /** The newest sweeps, oldest first, for telling how the sniffer does. */
  readonly recent: readonly TimedSweep[];
}

/** Why there is no sniffer although one was wanted. Each kind has its words and its remedy in `text/`. */
export type SnifferFailure =
  | { readonly kind: "unsupported" } // this browser has no Web Bluetooth: use another, or the virtual sniffer
  | { readonly kind: "notAllowed" } // no tap behind the call, or the page may not: tap the button again
  | { readonly kind: "unreachable" } // out of range, off, or busy with another phone
  | { readonly kind: "forgotten"; readonly name: string } // the browser no longer remembers it: choose it again
  | { readonly kind: "notASniffer" } // it lacks the sniffer service
  | { readonly kind: "badLayout"; readonly error: LayoutError } // another profile version, or garbled
  | { readonly kind: "unexpected"; readonly detail: string };

export type SnifferState =
  | { readonly kind: "none" }
  | { readonly kind: "choosing" } // the browser's chooser is open
  | { readonly kind: "connecting"; readonly name: string; readonly virtual: boolean }
  | { readonly kind: "ready"; readonly sniffer: ConnectedSniffer }
  | {
      readonly kind: "lost"; // connected before; reconnecting is offered
      readonly sniffer: ConnectedSniffer;
      /** Why the last attempt to reconnect failed. */
      readonly failure: SnifferFailure | null;
    }
  | { readonly kind: "failed"; readonly failure: SnifferFailure };
