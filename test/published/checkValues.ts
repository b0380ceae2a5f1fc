/** Reads the check blocks that may lie beside the project. Tests skip where they are absent. */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const FILE = fileURLToPath(new URL("../../../shared/check-values.md", import.meta.url));

/** One check: an id, and whatever numbers its kind needs. */
export type Check = { readonly id: string } & Readonly<Record<string, unknown>>;

/** Whether the check values are here. */
export const hasCheckValues = existsSync(FILE);

/** Every check of the file's ```json check blocks by its id; empty where the file is absent. */
export function readChecks(): ReadonlyMap<string, Check> {
  if (!hasCheckValues) return new Map();
  const blocks = [...readFileSync(FILE, "utf8").matchAll(/```json check\n([\s\S]*?)\n```/g)];
  const checks = blocks.flatMap(([, text]) => JSON.parse(text ?? "[]") as Check[]);
  return new Map(checks.map((check) => [check.id, check]));
}

const CHECKS = readChecks();

/** The check with that id, its fields taken as the test says. @throws {Error} if the file lacks it */
export function check<Fields>(id: string): Fields {
  const found = CHECKS.get(id);
  if (found === undefined) throw new Error(`no check ${id}`);
  return found as Fields;
}

/** Ids that start so, to hold a test to covering all of them. */
export function idsStarting(prefix: string): string[] {
  return [...CHECKS.keys()].filter((id) => id.startsWith(prefix));
}
