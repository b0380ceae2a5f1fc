/** The nose file: one JSON object, "nidor-nose/1", or "nidor-nose/2" where moved to another sniffer. Reading never throws, and says what is wrong. */
import * as v from "valibot";
import { type Channel, sameChannels } from "../kernel/channel.js";
import { err, ok, type Result } from "../kernel/result.js";
import { NOSE_FORMAT, TRANSFERRED_FORMAT, type Nose } from "./nose.js";
import { noseSchema } from "./noseSchema.js";
import { shapeFault } from "./noseShape.js";
import { type NumberList, packNumbers } from "./packNumbers.js";

/** Why a nose file was refused. */
export type NoseFileError =
  | { readonly kind: "notJson"; readonly detail: string } // not a nose file, or cut short: export it again
  | { readonly kind: "otherFormat"; readonly format: string } // made by another version: update, or teach anew
  | { readonly kind: "otherChannels" } // of another sniffer or heater programme: teach a nose on this one
  | { readonly kind: "badField"; readonly field: string; readonly detail: string }; // damaged: export it again

/** Reads a nose file. @param channels - the layout that the nose must suit; any if left out */
export function parseNose(fileText: string, channels?: readonly Channel[]): Result<Nose, NoseFileError> {
  let value: unknown;
  try {
    value = JSON.parse(fileText);
  } catch (cause) {
    return err({ kind: "notJson", detail: cause instanceof Error ? cause.message : String(cause) });
  }
  return checkNose(value, channels);
}

/** Checks a value that claims to be a nose as it stands in a file. */
export function checkNose(value: unknown, channels?: readonly Channel[]): Result<Nose, NoseFileError> {
  const format =
    typeof value === "object" && value !== null && "format" in value && typeof value.format === "string"
      ? value.format
      : "none";
  if (format !== NOSE_FORMAT && format !== TRANSFERRED_FORMAT) return err({ kind: "otherFormat", format });
  const checked = v.safeParse(noseSchema, value, { abortEarly: true });
  if (!checked.success) {
    const issue = checked.issues[0];
    return err({ kind: "badField", field: v.getDotPath(issue) ?? "", detail: issue.message });
  }
  const nose: Nose = checked.output;
  const field = shapeFault(nose);
  if (field !== null)
    return err({ kind: "badField", field, detail: "does not fit the other parts of the nose" });
  if (channels !== undefined && !sameChannels(nose.sniffer.channels, channels))
    return err({ kind: "otherChannels" });
  return ok(nose);
}

/** Writes a nose file. Reading it back gives the same nose, number by number. */
export function serialiseNose(nose: Nose): string {
  return `${JSON.stringify(packedNose(nose))}\n`;
}

/** What stands in a nose file, before it becomes text. */
export function packedNose(nose: Nose): unknown {
  return packed(nose);
}

function packed(value: unknown): unknown {
  if (isNumberList(value)) return packNumbers(value);
  if (Array.isArray(value)) return value.map(packed);
  if (typeof value !== "object" || value === null) return value;
  const parts = Object.entries(value).filter(([, part]) => part !== undefined);
  return Object.fromEntries(parts.map(([key, part]) => [key, packed(part)]));
}

function isNumberList(value: unknown): value is NumberList {
  return (
    value instanceof Float32Array ||
    value instanceof Int32Array ||
    value instanceof Int16Array ||
    value instanceof Uint8Array
  );
}

/** Words for a refused nose file. */
export function noseFileWords(error: NoseFileError): string {
  switch (error.kind) {
    case "notJson":
      return `is not a nose file (${error.detail})`;
    case "otherFormat":
      return `has the format "${error.format}"; this version reads "${NOSE_FORMAT}" and "${TRANSFERRED_FORMAT}"`;
    case "otherChannels":
      return "was taught on another channel layout";
    case "badField":
      return `${error.field}: ${error.detail}`;
  }
}
