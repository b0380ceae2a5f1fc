import type { ModelKind } from "../nose/models.js";
import type { Nose } from "../nose/nose.js";
import type { NoseReport } from "../nose/report.js";
import type { Crew } from "./crew.js";

export interface TeachOptions {
  /** Any number: the same samples and seed give the same nose. */
  readonly seed: number;
  readonly id: string;
  readonly name: string;
  /** ISO 8601 instant. */
  readonly taughtAt: string;
  /** What is held out together: a plate (default), or all plates of an occasion. */
  readonly split?: "plate" | "occasion" | undefined;
  /** Groups to teach; all that the samples name if left out. */
  readonly groups?: readonly string[] | undefined;
  /** Name of the backend in use, for the report; as a promise, while it is still being chosen: only the nets wait for it. */
  readonly backend?: string | Promise<string> | undefined;
  /** How much each sample counts beside the others, by sniff id, positive; 1 if not named. For a refresh. */
  readonly recency?: Readonly<Record<string, number>> | undefined;
  /** Start from this nose's nets and keep its recipe. For a refresh. */
  readonly start?: Nose | undefined;
  /** Also return the nose as it would be with each plain model alone, for side-by-side reports. */
  readonly withRivals?: boolean | undefined;
  /** Leave the nets out, for quick checks. */
  readonly withoutNets?: boolean | undefined;
  /** Who fits the plain models; this thread alone if left out. The nose is the same either way. */
  readonly crew?: Crew | undefined;
  readonly onProgress?: ((done: number) => void) | undefined;
  readonly isCancelled?: (() => boolean) | undefined;
}

export interface Taught {
  readonly nose: Nose;
  readonly report: NoseReport;
  /** The same nose with one model alone; empty unless asked for. */
  readonly rivals: Readonly<Partial<Record<ModelKind, Nose>>>;
}
