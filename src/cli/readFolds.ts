import { readFileSync } from "node:fs";
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import type { GivenFolds } from "../teaching/assessOnGivenFolds.js";

const foldsSchema = v.record(
  v.string(),
  v.record(v.string(), v.pipe(v.number(), v.safeInteger(), v.minValue(0))),
);

/** Reads the folds of every group from a JSON file. @returns what is wrong with the file, in words */
export function readFolds(path: string): Result<GivenFolds, string> {
  let value: unknown;
  try {
    value = JSON.parse(readFileSync(path, "utf8"));
  } catch (cause) {
    return err(cause instanceof Error ? cause.message : String(cause));
  }
  const checked = v.safeParse(foldsSchema, value, { abortEarly: true });
  if (!checked.success) {
    const issue = checked.issues[0];
    return err(`${v.getDotPath(issue) ?? "the whole"}: ${issue.message}`);
  }
  const groups = Object.entries(checked.output);
  return ok(new Map(groups.map(([group, folds]) => [group, new Map(Object.entries(folds))])));
}
