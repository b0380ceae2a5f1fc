import { readFileSync, writeFileSync } from "node:fs";
import { noseFileWords, parseNose, serialiseNose } from "../nose/noseFile.js";
import { refreshWithGain } from "../teaching/refreshWithGain.js";
import type { Command } from "./commandLine.js";
import { readSamples } from "./readSamples.js";
import { refreshText } from "./refreshText.js";
import { startBackend } from "./startBackend.js";
import { teachErrorWords } from "./teachErrorWords.js";

/** `nidor refresh`: brings a nose up to date, prints the gain, writes the nose if asked. Returns the exit code. */
export async function refreshCommand(command: Command & { kind: "refresh" }): Promise<number> {
  const old = parseNose(readFileSync(command.nose, "utf8"));
  if (!old.ok) {
    process.stderr.write(`${command.nose}: ${noseFileWords(old.error)}\n`);
    return 1;
  }
  const fresh = readSamples(command.fresh);
  const known = command.old === undefined ? { sniffs: [], refused: 0 } : readSamples(command.old);
  if (command.old === undefined)
    process.stderr.write("without --old the refreshed nose rests on the fresh plates alone\n");
  const taughtAt = new Date().toISOString();
  const refreshed = await refreshWithGain(old.value, known.sniffs, fresh.sniffs, {
    seed: command.seed,
    id: `nose-${taughtAt}`,
    name: command.name,
    taughtAt,
    backend: await startBackend(),
  });
  if (!refreshed.ok) {
    const { error } = refreshed;
    const words =
      error.kind === "tooFewFresh"
        ? `holds ${error.plates} plates that ${command.nose} was not taught and its sniffer took; two are needed`
        : teachErrorWords(error);
    process.stderr.write(`${command.fresh}: ${words}\n`);
    return 1;
  }
  if (command.out !== undefined) writeFileSync(command.out, serialiseNose(refreshed.value));
  process.stdout.write(refreshText(refreshed.value));
  return fresh.refused + known.refused > 0 ? 1 : 0;
}
