import { readFileSync } from "node:fs";
import { judgedSniff } from "../finding/judgedSniff.js";
import { noseFileWords, parseNose } from "../nose/noseFile.js";
import type { Command } from "./commandLine.js";
import { readSamples } from "./readSamples.js";

/** `nidor check`: one JSON line a sniff. Returns the exit code. */
export function checkCommand(command: Command & { kind: "check" }): number {
  const nose = parseNose(readFileSync(command.nose, "utf8"));
  if (!nose.ok) {
    process.stderr.write(`${command.nose}: ${noseFileWords(nose.error)}\n`);
    return 1;
  }
  const { sniffs, refused } = readSamples(command.file);
  const groups = command.groups ?? nose.value.groups.map(({ name }) => name);
  for (const sniff of sniffs)
    process.stdout.write(
      `${JSON.stringify(judgedSniff(nose.value, sniff, groups, command.acceptedMissRate))}\n`,
    );
  return refused > 0 ? 1 : 0;
}
