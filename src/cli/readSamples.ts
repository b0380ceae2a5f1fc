import { readFileSync } from "node:fs";
import { readSniffFile } from "../sniff/sniffFile.js";
import type { Sniff } from "../sniff/sniff.js";

/** Good lines of a sniff file, and whether any line was refused. */
export interface ReadSamples {
  readonly sniffs: readonly Sniff[];
  readonly refused: number;
}

/** Reads a sniff file; every refused line goes to standard error with its number, field and cause. */
export function readSamples(path: string): ReadSamples {
  const { sniffs, faults } = readSniffFile(readFileSync(path, "utf8"));
  for (const { line, field, cause } of faults)
    process.stderr.write(`${path}: line ${line}: ${field === "" ? "" : `${field}: `}${cause}\n`);
  return { sniffs, refused: faults.length };
}
