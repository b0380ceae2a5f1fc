/** What one backup holds, and what a plan to bring it in says (types only). */

/** The record of the settings table that names the nose in use. */
export const ACTIVE_NOSE_ID = "activeNose";

/** The tables of a backup, in the order in which they are written. */
export const BACKUP_TABLES = [
  "settings",
  "sniffers",
  "checkJar",
  "noses",
  "noseEvents",
  "sniffs",
  "sniffNotes",
  "drafts",
  "meals",
  "photos",
  "setAside",
] as const;
export type BackupTable = (typeof BACKUP_TABLES)[number];

/** One record of a backup. Its value is plain JSON, but for a photo, whose bytes travel beside it. */
export interface BackupRecord {
  readonly table: BackupTable;
  readonly id: string;
  /** Made from demo data. */
  readonly demo: boolean;
  /** ISO 8601 instant of the last change; null for a record that never changes. */
  readonly changedAt: string | null;
  readonly value: Readonly<Record<string, unknown>>;
  /** Only for a photo. */
  readonly bytes?: Uint8Array | undefined;
}

/** Everything that one backup file holds. */
export interface BackupContents {
  /** ISO 8601 instant. */
  readonly writtenAt: string;
  readonly records: readonly BackupRecord[];
}

/** What is already here under one id: enough to tell same from differing without holding every record twice. */
export interface ExistingRecord {
  readonly table: BackupTable;
  readonly id: string;
  readonly changedAt: string | null;
  /** From `fingerprintOf`. */
  readonly fingerprint: string;
}

/** What to do with a record that is here already and differs. */
export type ImportChoice = "keepMine" | "takeTheirs" | "keepBoth";

/** One record that is here already and differs, with what is proposed. */
export interface ImportDifference {
  readonly mine: ExistingRecord;
  readonly theirs: BackupRecord;
  readonly choice: ImportChoice;
  /** The choices that make sense for this record. */
  readonly choices: readonly ImportChoice[];
}

/** What an import would do; nothing has been done yet. */
export interface ImportPlan {
  /** Not here yet. */
  readonly fresh: readonly BackupRecord[];
  /** Here already, and the same. */
  readonly same: readonly { readonly table: BackupTable; readonly id: string }[];
  readonly differing: readonly ImportDifference[];
}
