/** Who this sniffer is and how long its sensors were heated: kept in one small file, written whole. */
import { mkdir, readFile, rename, writeFile } from "node:fs/promises";
import { dirname } from "node:path";
import * as v from "valibot";
import { err, ok, type Result } from "../kernel/result.js";
import type { Problem } from "./problem.js";

export interface SnifferIdentity {
  /** 16 lower-case hexadecimal digits. New sensors are a new sniffer: then the file is to be made anew. */
  readonly snifferId: string;
  readonly heatedMs: number;
}

const identitySchema = v.strictObject({
  format: v.literal("nidor-sniffer/1"),
  snifferId: v.pipe(
    v.string(),
    v.regex(/^(?!0{16}|f{16})[0-9a-f]{16}$/, "snifferId is not 16 hexadecimal digits"),
  ),
  heatedMs: v.pipe(v.number(), v.minValue(0, "heatedMs is negative")),
});

/**
 * Reads the identity, or makes one where there is no file yet.
 *
 * @param newId - gives 16 random hexadecimal digits
 */
export async function loadIdentity(
  file: string,
  newId: () => string,
): Promise<Result<SnifferIdentity, Problem>> {
  let text: string;
  try {
    text = await readFile(file, "utf8");
  } catch (cause) {
    if (!(cause instanceof Error && "code" in cause && cause.code === "ENOENT")) {
      return err({ kind: "unreadable", file, detail: String(cause) });
    }
    const made = { snifferId: newId(), heatedMs: 0 };
    const kept = await keepIdentity(file, made);
    return kept.ok ? ok(made) : kept;
  }
  return parseIdentity(file, text);
}

/** Writes beside the file and then renames, so that pulling the plug leaves the old one or the new one. */
export async function keepIdentity(file: string, identity: SnifferIdentity): Promise<Result<void, Problem>> {
  try {
    await mkdir(dirname(file), { recursive: true });
    await writeFile(`${file}.new`, `${JSON.stringify({ format: "nidor-sniffer/1", ...identity })}\n`);
    await rename(`${file}.new`, file);
    return ok(undefined);
  } catch (cause) {
    return err({ kind: "unreadable", file, detail: String(cause) });
  }
}

function parseIdentity(file: string, text: string): Result<SnifferIdentity, Problem> {
  try {
    const checked = v.safeParse(identitySchema, JSON.parse(text));
    if (!checked.success) return err({ kind: "badState", file, cause: checked.issues[0].message });
    const { snifferId, heatedMs } = checked.output;
    return ok({ snifferId, heatedMs });
  } catch {
    return err({ kind: "badState", file, cause: "it is not JSON" });
  }
}
