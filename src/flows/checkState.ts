/** The states of one check at the table, its events and its effects (types only). */
import type { AirReading } from "../kernel/air.js";
import type { Channel } from "../kernel/channel.js";
import type { PlateFinding } from "../finding/finding.js";
import type { RecordedFlag, Sniff } from "../sniff/sniff.js";
import type { Steadiness } from "../sniff/steadiness.js";

/** One sweep as it came from the sniffer; time is the device's own. */
export interface TimedSweep {
  readonly atMs: number;
  readonly ohm: readonly number[];
}

/** Who and what this check is about; ids and instants are made by the app. */
export interface CheckSubject {
  readonly sniffId: string;
  readonly plate: string;
  readonly occasion: string;
  readonly dish: string;
  readonly takenAt: string;
  readonly snifferId: string;
  readonly channels: readonly Channel[];
  /** When to give up waiting for the evidence to settle. */
  readonly headspaceLimitMs: number;
}

/** What has been gathered so far. */
export interface Gathered {
  readonly subject: CheckSubject;
  readonly cleanAir: readonly TimedSweep[];
  readonly headspace: readonly TimedSweep[];
  readonly cleanAirReading: AirReading;
  readonly headspaceReading: AirReading;
  readonly flags: readonly RecordedFlag[];
  /** Sweeps that the sniffer made and that never came, since the phase before the plate began. */
  readonly sweepsLost: number;
}

/** Why a check stands still. Each has its sentence and its remedy in `text/`. */
export type InterruptCause =
  | "linkLost" // walked out of range, or the sniffer was switched off
  | "neverSteady" // clean air did not settle within the limit
  | "snifferFault" // the sniffer reports a heater fault
  | "snifferRestarted" // it lost power or began anew in mid-sniff
  | "commandRefused" // start was not accepted
  | "noSweeps"; // started, but nothing arrives

/** Why a sniff that was cut short could not go on once the sniffer was back. Each has its sentence in `text/`. */
export type ResumeRefusal =
  | "otherSniffer" // another device, or other channels
  | "restarted" // it lost power meanwhile: its heater began cold
  | "runEnded" // it stopped measuring meanwhile
  | "gapTooLong"; // the hole over the plate is too large to read across

/** What became of the run while the link was down. */
export type RunAfterLoss =
  /** The sniffer went on measuring; `gapMs` of its own time went unheard. */
  | { readonly kind: "sameRun"; readonly gapMs: number }
  | { readonly kind: "broken"; readonly why: Exclude<ResumeRefusal, "gapTooLong"> };

/** A check that is under way. */
export type RunningState =
  | {
      readonly phase: "warming";
      readonly gathered: Gathered;
      readonly warmUpLeftMs: number;
      /** Longest time left seen so far: what the progress is measured against. */
      readonly warmUpMs: number;
    }
  | {
      readonly phase: "cleanAir";
      readonly gathered: Gathered;
      readonly steadiness: Steadiness;
      readonly sinceMs: number | null;
    }
  /** The baseline is steady: waiting for the hand to move over the plate. */
  | {
      readonly phase: "overPlate";
      readonly gathered: Gathered;
      readonly steadyAtMs: number;
      /** The person is ready and the count-down runs: the hand is on its way, so no sweep is clean air any more. */
      readonly countingDown: boolean;
    }
  | {
      readonly phase: "headspace";
      readonly gathered: Gathered;
      /** The sweep that was under way when the hand moved is half clean air: it is let go. */
      readonly straddling: boolean;
      readonly elapsedMs: number;
      readonly live: PlateFinding | null;
      readonly settled: boolean;
    };

export type CheckState =
  | { readonly phase: "idle" }
  | RunningState
  | {
      readonly phase: "interrupted";
      readonly cause: InterruptCause;
      readonly during: RunningState["phase"];
      readonly gathered: Gathered;
      /** Where it stood, for going on once the sniffer is back. */
      readonly before: RunningState;
      /** Why it could not go on although the sniffer is back; null where that was not tried. */
      readonly refused: ResumeRefusal | null;
      /** Can what was gathered still be assessed (with the reason shown)? */
      readonly usable: boolean;
    }
  | { readonly phase: "done"; readonly sniff: Sniff; readonly finding: PlateFinding };

export type CheckEvent =
  | { readonly kind: "begin"; readonly subject: CheckSubject }
  /** A sniff that was kept when it was cut short, judged later. */
  | { readonly kind: "reopen"; readonly sniff: Sniff; readonly finding: PlateFinding }
  | { readonly kind: "warmUp"; readonly leftMs: number }
  | { readonly kind: "sweep"; readonly sweep: TimedSweep }
  | { readonly kind: "sweepsLost"; readonly count: number }
  | { readonly kind: "air"; readonly reading: AirReading }
  | { readonly kind: "getReady" } // the hand moves over the plate while the count-down runs
  | { readonly kind: "overPlateNow" }
  | {
      readonly kind: "assessed";
      readonly sniff: Sniff;
      readonly finding: PlateFinding;
      readonly settled: boolean;
      readonly last: boolean;
    }
  | { readonly kind: "interrupted"; readonly cause: InterruptCause }
  /** The sniffer that was lost answers again. */
  | { readonly kind: "linkBack"; readonly run: RunAfterLoss }
  | { readonly kind: "goOnUnsteady" } // the user goes on although the baseline never settled
  | { readonly kind: "finishNow" } // the user ends the headspace early, or uses what was gathered before a loss
  | { readonly kind: "cancel" };

export type CheckEffect =
  | { readonly kind: "startSweeps" }
  | { readonly kind: "stopSweeps" }
  | { readonly kind: "countDown" } // ends in `overPlateNow`
  | { readonly kind: "purge" }
  | { readonly kind: "assess"; readonly sniff: Sniff; readonly last: boolean }
  | { readonly kind: "saveDraft"; readonly sniff: Sniff }
  | { readonly kind: "announce"; readonly phase: CheckState["phase"] } // vibrate, live region
  | { readonly kind: "keepAwake"; readonly on: boolean };

export interface CheckStep {
  readonly state: CheckState;
  readonly effects: readonly CheckEffect[];
}
