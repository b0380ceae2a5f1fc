/** Teaching a nose, from the tap to the person's word on it (types only). */
import type { Nose } from "../nose/nose.js";
import type { NoseFileError } from "../nose/noseFile.js";
import type { GroupComparison } from "../nose/report.js";

/** Why there is no new nose. Each kind has its words and its remedy in `text/`. */
export type TeachProblem =
  | { readonly kind: "noSamples" } // keep a sniff as a sample first
  | { readonly kind: "noKnownGroup" } // say what was on the plates
  | { readonly kind: "tooFewFresh"; readonly plates: number } // keep more fresh plates first
  | { readonly kind: "busy" } // a nose is being taught already
  | { readonly kind: "failed"; readonly detail: string } // the device could not compute
  | { readonly kind: "workerCrashed"; readonly detail: string } // out of memory or not loaded: try again
  | { readonly kind: "badNose"; readonly error: NoseFileError } // what came back does not hold together
  | { readonly kind: "storage"; readonly detail: string }; // samples could not be read, or the nose not kept

/** Where an offered nose comes from. */
export type OfferSource = "taught" | "refreshed" | "moved" | "file" | "version";

export type TeachState =
  | { readonly kind: "idle" }
  /** `done` is a fraction; null while the samples are read and the worker starts. */
  | {
      readonly kind: "teaching";
      readonly done: number | null;
      /** In the checks the nose is ready already, and what is left can be left out. */
      readonly stage: "teaching" | "checks";
      readonly refresh: boolean;
      readonly cancelling: boolean;
    }
  /** Two noses are being put side by side. */
  | { readonly kind: "comparing" }
  /** Kept, but not in use until the person accepts it. */
  | {
      readonly kind: "proposed";
      readonly nose: Nose;
      readonly before: Nose | null;
      readonly source: OfferSource;
      /** Both on the same plates that neither had met; empty where there are none. */
      readonly compared: readonly GroupComparison[];
    }
  | { readonly kind: "problem"; readonly problem: TeachProblem };

/** The nose in use. */
export type ActiveNose =
  | { readonly kind: "loading" }
  | { readonly kind: "none" } // nothing was taught or accepted yet
  | { readonly kind: "ready"; readonly nose: Nose; readonly demo: boolean }
  | { readonly kind: "unreadable"; readonly detail: string }; // kept, but damaged or of another version
