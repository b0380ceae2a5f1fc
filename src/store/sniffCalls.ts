import { ok } from "../kernel/result.js";
import type { Sniff } from "../sniff/sniff.js";
import { parseSniff } from "../sniff/sniffFile.js";
import type { Engine, EngineTransaction, Row } from "./engine.js";
import { checkOut, parseSniffNote, type BadRow, type SniffNoteValue } from "./records.js";
import { PLAIN, SAMPLE, sniffNoteRow, sniffRow } from "./rows.js";
import { rowOrder } from "./rowOrder.js";
import { getOne, readChecked, readOne } from "./setAside.js";
import type { SniffStore } from "./store.js";
import type { Stored } from "./storeError.js";
import type { Page, SampleLabel, SniffNote, SniffQuery } from "./storeTypes.js";

const DEFAULT_LIMIT = 50;

/** The calls on sniffs. */
export function sniffCalls(engine: Engine): SniffStore {
  return {
    getSniff: (id) => readOne(engine, "sniffs", id, parseSniff),
    listSniffs: (query = {}) => listSniffs(engine, query),
    labelSniff: (id, label, changedAt) =>
      engine.write(["sniffNotes", "setAside"], ["sniffs"], (tx) => relabel(tx, id, label, changedAt)),
    async readSamples() {
      const outcome = await readChecked(engine, "sniffs", readSamples, ["sniffNotes"]);
      if (!outcome.ok) return outcome;
      return ok({ samples: outcome.value.value, setAside: outcome.value.setAside });
    },
  };
}

/** Keeps sniffs that are not known yet, each with its note; a known one stays as it is. */
export async function addSniffs(tx: EngineTransaction, sniffs: readonly Sniff[], demo: 0 | 1): Promise<void> {
  for (const sniff of sniffs) {
    const raw = sniffRow(sniff, { demo });
    if ((await tx.get("sniffs", sniff.id)) !== undefined) continue;
    await tx.put("sniffs", [raw]);
    await tx.put("sniffNotes", [sniffNoteRow(firstNote(sniff), { demo })]);
  }
}

/** Writes what is said of a sniff; the sweeps are not touched. */
export async function relabel(
  tx: EngineTransaction,
  id: string,
  label: SampleLabel | null,
  changedAt: string,
): Promise<void> {
  const note = await getOne(tx, "sniffNotes", id, parseSniffNote);
  const demo = (await tx.get("sniffNotes", id))?.demo ?? 0;
  await tx.put("sniffNotes", [sniffNoteRow({ ...note, label, changedAt }, { demo })]);
}

/** Gives each sniff that came in without its note a first one. */
export async function addMissingNotes(tx: EngineTransaction): Promise<void> {
  const known = new Set((await tx.all("sniffNotes")).map((row) => row.id));
  const missing = (await tx.all("sniffs")).filter((row) => !known.has(row.id));
  for (const row of missing)
    for (const sniff of checkOut(parseSniff, [row]).sound)
      await tx.put("sniffNotes", [sniffNoteRow(firstNote(sniff), row)]);
}

function firstNote(sniff: Sniff): SniffNoteValue {
  return {
    sniffId: sniff.id,
    takenAt: sniff.takenAt,
    dish: sniff.dish,
    snifferId: sniff.sniffer.id,
    label: null,
    changedAt: sniff.takenAt,
  };
}

async function listSniffs(engine: Engine, query: SniffQuery): Stored<Page<SniffNote>> {
  const limit = query.limit ?? DEFAULT_LIMIT;
  const outcome = await readChecked(engine, "sniffNotes", async (tx) => {
    const range = { limit, ...(query.after === undefined ? {} : { after: query.after }) };
    const buckets = query.samplesOnly === true ? [SAMPLE] : [SAMPLE, PLAIN];
    const found: Row[] = [];
    for (const bucket of buckets) found.push(...(await tx.range("sniffNotes", bucket, range)));
    const rows = found.sort((a, b) => rowOrder(b, a)).slice(0, limit);
    const last = rows.length < limit ? undefined : rows.at(-1);
    const next = last === undefined ? null : { atMs: last.atMs, id: last.id };
    return { value: { items: notesOf(rows), next }, bad: checkOut(parseSniffNote, rows).bad };
  });
  if (!outcome.ok) return outcome;
  return ok({ ...outcome.value.value, setAside: outcome.value.setAside });
}

function notesOf(rows: readonly Row[]): SniffNote[] {
  return rows.flatMap((row) => {
    const note = parseSniffNote(row.value);
    return note.ok ? [{ ...note.value, demo: row.demo === 1 }] : [];
  });
}

async function readSamples(tx: EngineTransaction): Promise<{ value: Sniff[]; bad: readonly BadRow[] }> {
  const notes = checkOut(parseSniffNote, await tx.range("sniffNotes", SAMPLE, { oldestFirst: true })).sound;
  const value: Sniff[] = [];
  const bad: BadRow[] = [];
  for (const note of notes) {
    const row = await tx.get("sniffs", note.sniffId);
    if (row === undefined) continue;
    const checked = checkOut(parseSniff, [row]);
    bad.push(...checked.bad);
    value.push(...checked.sound.map((sniff) => asSample(sniff, note.label)));
  }
  return { value, bad };
}

/** A sniff under the label of its sample. */
export function asSample(sniff: Sniff, label: SampleLabel | null): Sniff {
  if (label === null) return sniff;
  const { groups, plate, occasion, dish } = label;
  return { ...sniff, groups, plate, occasion, dish };
}
