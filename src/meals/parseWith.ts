/** How every record of ours is checked: a schema in, the record or its first fault out. */
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";

/** Where a record broke its shape, and how. */
export interface RecordFault {
  /** Dotted path of the field, or "" for the whole record. */
  readonly field: string;
  readonly cause: string;
}

/** A check of one kind of record. */
export type Parse<T> = (value: unknown) => Result<T, RecordFault>;

/** An ISO 8601 instant with its zone. */
export const instant = v.pipe(
  v.string(),
  v.isoTimestamp("must be an ISO 8601 instant such as 2026-11-25T18:30:00Z"),
  v.check((value) => !Number.isNaN(Date.parse(value)), "must be a day and time that exist"),
);

/** Makes the check of a schema; unknown keys are as the schema says. */
export function parseWith<T>(schema: v.GenericSchema<unknown, T>): Parse<T> {
  return (value) => {
    const checked = v.safeParse(schema, value, { abortEarly: true });
    if (checked.success) return ok(checked.output);
    const issue = checked.issues[0];
    return err({ field: v.getDotPath(issue) ?? "", cause: issue.message });
  };
}
