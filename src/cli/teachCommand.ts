import { writeFileSync } from "node:fs";
import { serialiseNose } from "../nose/noseFile.js";
import { checkedNose } from "../teaching/checkSamples.js";
import { teachNose, type TeachOptions } from "../teaching/teachNose.js";
import type { Command } from "./commandLine.js";
import { readSamples } from "./readSamples.js";
import { startBackend } from "./startBackend.js";
import { teachErrorWords } from "./teachErrorWords.js";
import { teachText } from "./teachText.js";

/** `nidor teach`: teaches a nose, writes it and prints what it is worth. Returns the exit code. */
export async function teachCommand(command: Command & { kind: "teach" }): Promise<number> {
  const { sniffs, refused } = readSamples(command.file);
  const backend = await startBackend();
  const taughtAt = new Date().toISOString();
  const options: TeachOptions = {
    seed: command.seed,
    id: `nose-${taughtAt}`,
    name: command.name,
    taughtAt,
    split: command.split,
    groups: command.groups,
    backend,
  };
  const taught = await teachNose(sniffs, options);
  if (!taught.ok) {
    process.stderr.write(`${command.file}: ${teachErrorWords(taught.error)}\n`);
    return 1;
  }
  const nose = await checkedNose(taught.value.nose, sniffs, options);
  writeFileSync(command.out, serialiseNose(nose));
  process.stdout.write(teachText(nose));
  return refused > 0 ? 1 : 0;
}
