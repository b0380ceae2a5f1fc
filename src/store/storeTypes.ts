/** The records of the store that no earlier station names. */
import type { Channel } from "../kernel/channel.js";
import type { GroupTruths } from "../kernel/groups.js";
import type { Meal } from "../meals/meal.js";
import type { Sniff } from "../sniff/sniff.js";
import type { SetAsideRecord } from "./storeError.js";

/** Tables as a listener names them. */
export const STORE_TABLES = [
  "meals",
  "photos",
  "sniffs",
  "noses",
  "settings",
  "sniffers",
  "checkJar",
  "drafts",
  "setAside",
] as const;
export type StoreTable = (typeof STORE_TABLES)[number];

/** What the user says of a sniff that is kept for teaching. It never touches the raw sweeps. */
export interface SampleLabel {
  readonly groups: GroupTruths;
  readonly plate: string;
  readonly occasion: string;
  readonly dish: string;
  /** ISO 8601 instant. */
  readonly keptAt: string;
  /** The meal whose known truth the label was taken from. */
  readonly mealId?: string | undefined;
}

/** A sniff as a list shows it: everything but the sweeps. */
export interface SniffNote {
  readonly sniffId: string;
  /** ISO 8601 instant. */
  readonly takenAt: string;
  readonly dish: string;
  readonly snifferId: string;
  /** null: kept, but not a sample. */
  readonly label: SampleLabel | null;
  /** ISO 8601 instant. */
  readonly changedAt: string;
  readonly demo: boolean;
}

/** A known sniffer. */
export interface SnifferRecord {
  readonly id: string;
  readonly name: string;
  readonly channels: readonly Channel[];
  /** ISO 8601 instants. */
  readonly firstSeenAt: string;
  readonly lastSeenAt: string;
  readonly note: string;
}

/** One sniff of the check jar, and how far from the reference it was. */
export interface CheckJarReading {
  readonly id: string;
  /** ISO 8601 instant. */
  readonly at: string;
  readonly snifferId: string;
  readonly sniffId: string;
  readonly score: number;
}

/** Something interrupted, kept so that nothing is lost. The flow that wrote it checks `value` on the way back. */
export interface Draft {
  readonly id: string;
  /** Such as "sniff" or "meal". */
  readonly kind: string;
  /** ISO 8601 instant. */
  readonly changedAt: string;
  readonly value: unknown;
}

/** What was decided about a nose, and when. */
export const NOSE_DECISIONS = ["taught", "accepted", "rejected", "rolledBack"] as const;
export type NoseDecision = (typeof NOSE_DECISIONS)[number];

/** One line of the history of the noses. */
export interface NoseEvent {
  readonly id: string;
  readonly noseId: string;
  readonly decision: NoseDecision;
  /** ISO 8601 instant. */
  readonly at: string;
}

/** One page of a list, newest first; `next` is null on the last page. */
export interface Page<T> {
  readonly items: readonly T[];
  readonly next: PageCursor | null;
  /** Records met on the way that did not pass their check. */
  readonly setAside: readonly SetAsideRecord[];
}

/** Where a page ended: give it back to get the next one. */
export interface PageCursor {
  readonly atMs: number;
  readonly id: string;
}

/** Which meals to list. Both instants are ISO 8601; `fromAt` is included and `beforeAt` is not. */
export interface MealQuery {
  readonly fromAt?: string;
  readonly beforeAt?: string;
  readonly after?: PageCursor;
  /** Default 50. */
  readonly limit?: number;
  readonly filter?: (meal: Meal) => boolean;
}

/** Which sniffs to list. */
export interface SniffQuery {
  readonly samplesOnly?: boolean;
  readonly after?: PageCursor;
  /** Default 50. */
  readonly limit?: number;
}

/** Raw sweeps with the label of the sample written over what was recorded, ready for teaching. */
export interface Samples {
  readonly samples: readonly Sniff[];
  readonly setAside: readonly SetAsideRecord[];
}

/** A photo as a list shows it. */
export interface PhotoNote {
  readonly id: string;
  readonly mime: string;
  readonly sizeBytes: number;
  readonly widthPx?: number | undefined;
  readonly heightPx?: number | undefined;
  /** ISO 8601 instant. */
  readonly addedAt: string;
}
