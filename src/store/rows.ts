/** Records to rows: which bucket, which time. One function for each table, so that the index is made in one place. */
import type { BackupRecord, BackupTable } from "../meals/backupContents.js";
import type { Meal } from "../meals/meal.js";
import { parseMeal } from "../meals/parseMeal.js";
import type { Photo } from "../meals/photo.js";
import type { Nose } from "../nose/nose.js";
import type { Sniff } from "../sniff/sniff.js";
import { parseSniff } from "../sniff/sniffFile.js";
import type { Row } from "./engine.js";
import { noseValue } from "./noseStore.js";
import {
  checkIn,
  parseCheckJar,
  parseDraft,
  parseNoseEvent,
  parsePhotoBytes,
  parsePhotoNote,
  parseSniffer,
  parseSniffNote,
  type SniffNoteValue,
} from "./records.js";
import { parseSettings, type Settings } from "./settings.js";
import type { CheckJarReading, Draft, NoseEvent, PhotoNote, SnifferRecord } from "./storeTypes.js";

/** Buckets of the index. A check jar reading is in the bucket of its sniffer. */
export const LIVE = "live";
export const DELETED = "deleted";
export const SAMPLE = "sample";
export const PLAIN = "plain";
export const ALL = "all";

/** The id of the one row of settings, and of the row that names the active nose. */
export const SETTINGS_ID = "settings";
export { ACTIVE_NOSE_ID } from "../meals/backupContents.js";

type Demo = { readonly demo: 0 | 1 };

export const mealRow = (meal: Meal, { demo }: Demo): Row => {
  const value = checkIn(parseMeal, meal);
  const bucket = value.deletedAt === undefined ? LIVE : DELETED;
  return { id: value.id, bucket, atMs: Date.parse(value.at), demo, value };
};

export const sniffRow = (sniff: Sniff, { demo }: Demo): Row => {
  const value = checkIn(parseSniff, sniff);
  return { id: value.id, bucket: ALL, atMs: Date.parse(value.takenAt), demo, value };
};

export const sniffNoteRow = (note: SniffNoteValue, { demo }: Demo): Row => {
  const value = checkIn(parseSniffNote, note);
  const bucket = value.label === null ? PLAIN : SAMPLE;
  return { id: value.sniffId, bucket, atMs: Date.parse(value.takenAt), demo, value };
};

export const photoRows = (photo: Photo, { demo }: Demo): { note: Row; bytes: Row } => {
  const { bytes, ...rest } = photo;
  const note: PhotoNote = checkIn(parsePhotoNote, { ...rest, sizeBytes: bytes.length });
  const common = { id: photo.id, bucket: ALL, atMs: Date.parse(photo.addedAt), demo };
  return {
    note: { ...common, value: note },
    bytes: { ...common, value: checkIn(parsePhotoBytes, { bytes }) },
  };
};

export const snifferRow = (sniffer: SnifferRecord, { demo }: Demo): Row => {
  const value = checkIn(parseSniffer, sniffer);
  return { id: value.id, bucket: ALL, atMs: Date.parse(value.lastSeenAt), demo, value };
};

export const checkJarRow = (reading: CheckJarReading, { demo }: Demo): Row => {
  const value = checkIn(parseCheckJar, reading);
  return { id: value.id, bucket: value.snifferId, atMs: Date.parse(value.at), demo, value };
};

export const draftRow = (draft: Draft, { demo }: Demo): Row => {
  const value = checkIn(parseDraft, draft);
  return { id: value.id, bucket: ALL, atMs: Date.parse(value.changedAt), demo, value };
};

export const noseRow = (nose: Nose, { demo }: Demo): Row => {
  return { id: nose.id, bucket: ALL, atMs: Date.parse(nose.taughtAt), demo, value: noseValue(nose) };
};

export const noseEventRow = (event: NoseEvent, { demo }: Demo): Row => {
  const value = checkIn(parseNoseEvent, event);
  return { id: value.id, bucket: ALL, atMs: Date.parse(value.at), demo, value };
};

export const settingsRow = (id: string, settings: Settings): Row => {
  const value = checkIn(parseSettings, settings);
  return { id, bucket: ALL, atMs: 0, demo: 0, value };
};

/** The row of a record out of a backup. Its value is not checked here: only what the index needs is read. */
export function rowOfRecord({ table, id, demo, value }: BackupRecord): Row {
  return { id, bucket: bucketOf(table, value), atMs: timeOf(value), demo: demo ? 1 : 0, value };
}

function bucketOf(table: BackupTable, value: BackupRecord["value"]): string {
  if (table === "meals") return value["deletedAt"] === undefined ? LIVE : DELETED;
  if (table === "sniffNotes") return value["label"] === null ? PLAIN : SAMPLE;
  if (table === "checkJar") return String(value["snifferId"]);
  return ALL;
}

/** The field that each table's list is ordered by; one of them at most is in a record of a table. */
function timeOf(value: BackupRecord["value"]): number {
  const at = value["at"] ?? value["takenAt"] ?? value["addedAt"] ?? value["lastSeenAt"] ?? value["taughtAt"];
  const ms = typeof at === "string" ? Date.parse(at) : NaN;
  return Number.isNaN(ms) ? 0 : ms;
}
