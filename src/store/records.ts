/** Each table's check, for the way in (our own mistake throws) and the way out (a bad record is set aside). */
import * as v from "valibot";
import { parseMeal } from "../meals/parseMeal.js";
import { instant, parseWith, type Parse, type RecordFault } from "../meals/parseWith.js";
import { parseSniff } from "../sniff/sniffFile.js";
import type { EngineTable, Row } from "./engine.js";
import { parseNose } from "./noseStore.js";
import { parseSettings } from "./settings.js";
import {
  NOSE_DECISIONS,
  type CheckJarReading,
  type Draft,
  type NoseEvent,
  type PhotoNote,
  type SnifferRecord,
  type SniffNote,
} from "./storeTypes.js";

const id = v.pipe(v.string(), v.nonEmpty("must not be empty"));
const finite = v.pipe(v.number(), v.finite("must be finite"));
const count = v.pipe(v.number(), v.integer("must be whole"), v.minValue(0, "must not be negative"));

const labelSchema = v.looseObject({
  groups: v.record(id, v.picklist(["present", "absent", "unknown"])),
  plate: id,
  occasion: id,
  dish: v.string(),
  keptAt: instant,
  mealId: v.optional(id),
});

const sniffNoteSchema = v.looseObject({
  sniffId: id,
  takenAt: instant,
  dish: v.string(),
  snifferId: id,
  label: v.nullable(labelSchema),
  changedAt: instant,
});
/** What is said of a sniff, as it is kept; `demo` is a field of the row. */
export type SniffNoteValue = Omit<SniffNote, "demo">;

const photoNoteSchema = v.looseObject({
  id,
  mime: v.pipe(v.string(), v.regex(/^image\/[\w.+-]+$/, "must be an image type")),
  sizeBytes: count,
  widthPx: v.optional(count),
  heightPx: v.optional(count),
  addedAt: instant,
});

const photoBytesSchema = v.looseObject({ bytes: v.instance(Uint8Array, "must be bytes") });

const snifferSchema = v.looseObject({
  id,
  name: v.string(),
  channels: v.array(
    v.looseObject({ sensor: count, heaterC: v.nullable(finite), dwellMs: v.nullable(finite) }),
  ),
  firstSeenAt: instant,
  lastSeenAt: instant,
  note: v.string(),
});

const checkJarSchema = v.looseObject({ id, at: instant, snifferId: id, sniffId: id, score: finite });
const draftSchema = v.looseObject({ id, kind: id, changedAt: instant, value: v.unknown() });
const noseEventSchema = v.looseObject({ id, noseId: id, decision: v.picklist(NOSE_DECISIONS), at: instant });

export const parseSniffNote: Parse<SniffNoteValue> = parseWith(sniffNoteSchema);
export const parsePhotoNote: Parse<PhotoNote> = parseWith(photoNoteSchema);
export const parsePhotoBytes: Parse<{ bytes: Uint8Array }> = parseWith(photoBytesSchema);
export const parseSniffer: Parse<SnifferRecord> = parseWith(snifferSchema);
export const parseCheckJar: Parse<CheckJarReading> = parseWith(checkJarSchema);
export const parseDraft: Parse<Draft> = parseWith(draftSchema);
export const parseNoseEvent: Parse<NoseEvent> = parseWith(noseEventSchema);

/** The check of every table whose rows are set aside when they fail it. */
export const PARSERS: Readonly<Record<Exclude<EngineTable, "setAside">, Parse<unknown>>> = {
  meals: parseMeal,
  photos: parsePhotoNote,
  photoBytes: parsePhotoBytes,
  sniffs: parseSniff,
  sniffNotes: parseSniffNote,
  noses: parseNose,
  noseEvents: parseNoseEvent,
  settings: parseSettings,
  sniffers: parseSniffer,
  checkJar: parseCheckJar,
  drafts: parseDraft,
};

/** Checks a record of our own making. @throws {RangeError} if it has the wrong shape */
export function checkIn<T>(parse: Parse<T>, value: unknown): T {
  const checked = parse(value);
  if (checked.ok) return checked.value;
  throw new RangeError(`${checked.error.field || "the record"} ${checked.error.cause}`);
}

/** A row and what its value broke. */
export interface BadRow {
  readonly row: Row;
  readonly cause: string;
}

/** Sound values and bad rows, each in the order of the rows. */
export function checkOut<T>(parse: Parse<T>, rows: readonly Row[]): { sound: T[]; bad: BadRow[] } {
  const sound: T[] = [];
  const bad: BadRow[] = [];
  for (const row of rows) {
    const checked = parse(row.value);
    if (checked.ok) sound.push(checked.value);
    else bad.push({ row, cause: causeOf(checked.error) });
  }
  return { sound, bad };
}

/** Field and cause in one line. */
export function causeOf(fault: RecordFault): string {
  return `${fault.field || "the record"}: ${fault.cause}`;
}
