/** What the page and the teaching worker say to each other (types only). */
import type { Nose } from "../nose/nose.js";
import type { NoseFileError } from "../nose/noseFile.js";
import type { GroupComparison } from "../nose/report.js";
import type { Result } from "../kernel/result.js";
import type { Sniff } from "../sniff/sniff.js";
import type { TransferError, TransferOptions } from "../transfer/transferNose.js";

/** One nose to teach. */
export interface TeachJob {
  readonly samples: readonly Sniff[];
  readonly seed: number;
  readonly noseId: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  /** Folder of the WASM backend, as a URL with a slash at its end. */
  readonly wasmPath: string;
  /** The nose in use, to be put beside the new one; null if there is none. */
  readonly inUse: Nose | null;
  /** Bring the nose in use up to date with the samples that are fresh for it, instead of teaching anew. */
  readonly refresh: boolean;
}

/** Two noses to be put side by side. */
export interface CompareJob {
  readonly older: Nose;
  readonly newer: Nose;
  readonly samples: readonly Sniff[];
}

/** A nose to be moved to another sniffer. */
export interface TransferJob {
  /** The taught nose. */
  readonly nose: Nose;
  readonly samples: readonly Sniff[];
  readonly options: TransferOptions;
}

export interface TeachProgress {
  /** The checks come after the nose is ready, and can be left out. */
  readonly stage: "teaching" | "checks";
  /** A fraction. */
  readonly done: number;
}

/** A taught nose, written as a file and read again by the worker: the page takes it as it is. */
export interface Taught {
  readonly nose: Nose;
  /** The nose in use beside the new one on the same plates; empty where they share none. */
  readonly compared: readonly GroupComparison[];
}

/** Why a job came to nothing, whatever the job. */
export type JobFailure =
  | { readonly kind: "cancelled" } // the user stopped it: nothing has changed
  | { readonly kind: "busy" } // a nose is being taught already
  | { readonly kind: "failed"; readonly detail: string } // the device could not compute
  | { readonly kind: "badNose"; readonly error: NoseFileError } // what came out cannot be read back: try again
  | { readonly kind: "workerCrashed"; readonly detail: string }; // out of memory or not loaded: try again

/** Why there is no nose. Each kind has its words in `text/`. */
export type TeachFailure =
  | { readonly kind: "noSamples" } // keep a sniff as a sample first
  | { readonly kind: "noKnownGroup" } // say what was on the plates
  | { readonly kind: "tooFewFresh"; readonly plates: number } // keep more fresh plates first
  | JobFailure;

/** A moved nose, written and read again too. */
export interface MovedNose {
  readonly nose: Nose;
  /** The taught nose as it is beside the moved one, on the second sniffer's plates. */
  readonly compared: readonly GroupComparison[];
}

export type TransferAnswer = Result<MovedNose, TransferError | JobFailure>;

export type ToTeachWorker =
  /** Samples of the job that follows: a few at a time, so that copying them holds up no tap. */
  | { readonly kind: "samples"; readonly request: number; readonly samples: readonly Sniff[] }
  | { readonly kind: "teach"; readonly request: number; readonly job: Omit<TeachJob, "samples"> }
  | { readonly kind: "compare"; readonly request: number; readonly job: Omit<CompareJob, "samples"> }
  | { readonly kind: "transfer"; readonly request: number; readonly job: Omit<TransferJob, "samples"> }
  | { readonly kind: "skipChecks"; readonly request: number }
  | { readonly kind: "cancel"; readonly request: number };

export type FromTeachWorker =
  | { readonly kind: "progress"; readonly request: number; readonly progress: TeachProgress }
  | { readonly kind: "done"; readonly request: number; readonly result: Result<Taught, TeachFailure> }
  | { readonly kind: "compared"; readonly request: number; readonly compared: readonly GroupComparison[] }
  | { readonly kind: "transferred"; readonly request: number; readonly result: TransferAnswer };
