import { readFileSync, writeFileSync } from "node:fs";
import { noseFileWords, parseNose, serialiseNose } from "../nose/noseFile.js";
import { transferNose } from "../transfer/transferNose.js";
import type { Command } from "./commandLine.js";
import { readSamples } from "./readSamples.js";
import { transferErrorWords, transferText } from "./transferText.js";

/** `nidor transfer`: moves a nose to another sniffer, prints the gain, writes the nose if asked. Returns the exit code. */
export function transferCommand(command: Command & { kind: "transfer" }): number {
  const taught = parseNose(readFileSync(command.nose, "utf8"));
  if (!taught.ok) {
    process.stderr.write(`${command.nose}: ${noseFileWords(taught.error)}\n`);
    return 1;
  }
  const first = readSamples(command.first);
  const second = readSamples(command.second);
  const sniffers = new Map(second.sniffs.map(({ sniffer }) => [sniffer.id, sniffer]));
  const [sniffer] = sniffers.values();
  if (sniffer === undefined || sniffers.size > 1) {
    process.stderr.write(`${command.second}: holds sniffs of ${sniffers.size} sniffers; one is needed\n`);
    return 1;
  }
  const transferredAt = new Date().toISOString();
  const options = { id: `nose-${transferredAt}`, name: command.name, transferredAt, sniffer };
  const moved = transferNose(taught.value, [...first.sniffs, ...second.sniffs], options);
  if (!moved.ok) {
    process.stderr.write(`${command.second}: ${transferErrorWords(moved.error)}\n`);
    return 1;
  }
  if (command.out !== undefined) writeFileSync(command.out, serialiseNose(moved.value.nose));
  process.stdout.write(transferText(moved.value));
  return first.refused + second.refused > 0 ? 1 : 0;
}
