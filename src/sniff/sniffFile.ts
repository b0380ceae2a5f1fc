/** The sniff file: JSON Lines, one sniff a line. A bad line is refused with its number; good lines stay. */
import * as v from "valibot";
import { deeperThan } from "../kernel/jsonDepth.js";
import { err, ok, type Result } from "../kernel/result.js";
import { RECORDED_FLAGS, type Sniff } from "./sniff.js";

/** Why one line was refused, with what to look at. */
export interface LineFault {
  /** Counted from 1, as editors do. */
  readonly line: number;
  /** Dotted path of the field, or "" for the whole line. */
  readonly field: string;
  readonly cause: string;
}

/** Objects within objects. Unknown keys are kept, and JSON can be read deeper than it can be written again. */
const MAX_DEPTH = 64;

const positive = v.pipe(v.number(), v.finite("must be finite"), v.gtValue(0, "must be positive"));
const finite = v.pipe(v.number(), v.finite("must be finite"));
const text = v.pipe(v.string(), v.maxLength(500, "is longer than 500 characters"));
const id = v.pipe(text, v.nonEmpty("must not be empty"));

const channelSchema = v.looseObject({
  sensor: v.pipe(v.number(), v.integer("must be whole"), v.minValue(0, "must not be negative")),
  heaterC: v.nullable(finite),
  dwellMs: v.nullable(v.pipe(finite, v.minValue(0, "must not be negative"))),
});

const phaseSchema = v.pipe(
  v.looseObject({
    atMs: v.pipe(v.array(finite), v.nonEmpty("needs at least one sweep")),
    ohm: v.array(v.array(positive)),
  }),
  v.check((phase) => phase.atMs.length === phase.ohm.length, "atMs and ohm differ in their number of sweeps"),
  v.check(
    ({ atMs }) => atMs.every((time, i) => i === 0 || time >= (atMs[i - 1] ?? time)),
    "atMs must not run backwards",
  ),
);

const airSchema = v.looseObject({
  temperatureC: v.optional(v.pipe(finite, v.minValue(-273.15, "is below absolute zero"))),
  humidityPct: v.optional(
    v.pipe(finite, v.minValue(0, "must be 0 to 100"), v.maxValue(100, "must be 0 to 100")),
  ),
  pressurePa: v.optional(v.pipe(finite, v.minValue(0, "must not be negative"))),
});

/** Shape of one line. Unknown keys are kept on every level. */
const sniffSchema = v.looseObject({
  format: v.literal("nidor-sniff/1", 'must be "nidor-sniff/1"'),
  id,
  takenAt: v.pipe(
    v.string(),
    v.isoTimestamp("must be an ISO 8601 instant such as 2026-11-25T18:30:00Z"),
    // An hour alone as the zone, +05, is ISO 8601 but no instant to ECMAScript: the sniff would have no place in time.
    v.check((value) => !Number.isNaN(Date.parse(value)), "must be a day and time that exist"),
  ),
  sniffer: v.looseObject({
    id,
    channels: v.pipe(v.array(channelSchema), v.nonEmpty("needs at least one channel")),
  }),
  plate: id,
  occasion: id,
  dish: text,
  groups: v.record(id, v.picklist(["present", "absent", "unknown"])),
  cleanAir: v.optional(phaseSchema),
  headspace: phaseSchema,
  air: v.optional(v.looseObject({ cleanAir: v.optional(airSchema), headspace: v.optional(airSchema) })),
  cleanAirAgeMs: v.optional(v.pipe(finite, v.minValue(0, "must not be negative"))),
  flags: v.optional(v.array(v.picklist(RECORDED_FLAGS))),
});

/** Checks a value that claims to be a sniff. The first fault found is returned. */
export function parseSniff(value: unknown): Result<Sniff, Omit<LineFault, "line">> {
  const checked = v.safeParse(sniffSchema, value, { abortEarly: true });
  if (!checked.success) {
    const issue = checked.issues[0];
    return err({ field: v.getDotPath(issue) ?? "", cause: issue.message });
  }
  const field = sweepOfWrongWidth(checked.output);
  if (field === undefined) return ok(checked.output);
  return err({ field, cause: "does not have one resistance for each channel" });
}

function sweepOfWrongWidth(sniff: Sniff): string | undefined {
  const width = sniff.sniffer.channels.length;
  for (const phase of ["cleanAir", "headspace"] as const) {
    const wrong = sniff[phase]?.ohm.findIndex((sweep) => sweep.length !== width) ?? -1;
    if (wrong >= 0) return `${phase}.ohm.${wrong}`;
  }
  return undefined;
}

/** Reads a whole sniff file. Blank lines are passed over; each bad line becomes one fault. */
export function readSniffFile(fileText: string): { sniffs: Sniff[]; faults: LineFault[] } {
  const sniffs: Sniff[] = [];
  const faults: LineFault[] = [];
  fileText
    .replace(/^\uFEFF/, "")
    .split(/\r?\n/)
    .forEach((lineText, i) => {
      if (lineText.trim() === "") return;
      const parsed = parseLine(lineText);
      if (parsed.ok) sniffs.push(parsed.value);
      else faults.push({ line: i + 1, ...parsed.error });
    });
  return { sniffs, faults };
}

/** Writes sniffs as JSON Lines, each with its unknown keys. */
export function writeSniffFile(sniffs: readonly Sniff[]): string {
  return sniffs.map((sniff) => `${JSON.stringify(sniff)}\n`).join("");
}

function parseLine(lineText: string): Result<Sniff, Omit<LineFault, "line">> {
  if (deeperThan(lineText, MAX_DEPTH)) return err({ field: "", cause: `is nested deeper than ${MAX_DEPTH}` });
  try {
    return parseSniff(JSON.parse(lineText));
  } catch (cause) {
    return err({
      field: "",
      cause: `is not JSON (${cause instanceof Error ? cause.message : String(cause)})`,
    });
  }
}
