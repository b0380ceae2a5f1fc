import { writeFileSync } from "node:fs";
import { assessSampleSet } from "../teaching/assessSampleSet.js";
import { assessOnGivenFolds } from "../teaching/assessOnGivenFolds.js";
import { assessSamples } from "../teaching/assessSamples.js";
import { summariseAssessment } from "../teaching/summariseAssessment.js";
import { assessText } from "./assessText.js";
import type { Command } from "./commandLine.js";
import { readFolds } from "./readFolds.js";
import { readSamples } from "./readSamples.js";
import { unknownFood } from "../teaching/unknownFood.js";
import { sampleSetText } from "./sampleSetText.js";
import { startBackend } from "./startBackend.js";
import { unknownFoodText } from "./unknownFoodText.js";
import { teachErrorWords } from "./teachErrorWords.js";

/** `nidor assess`: prints the report, and writes the held-out answers if asked. Returns the exit code. */
export async function assessCommand(command: Command & { kind: "assess" }): Promise<number> {
  const given = command.givenFolds === undefined ? undefined : readFolds(command.givenFolds);
  if (given?.ok === false) {
    process.stderr.write(`${command.givenFolds}: ${given.error}\n`);
    return 1;
  }
  const { sniffs, refused } = readSamples(command.file);
  const backend = await startBackend();
  const { file: path, split, folds, seed, groups, acceptedMissRate, givenFolds } = command;
  const options = { split, folds, seed, groups, acceptedMissRate, backend };
  const assessed =
    given === undefined
      ? await assessSamples(sniffs, options)
      : await assessOnGivenFolds(sniffs, given.value, options);
  if (!assessed.ok) {
    process.stderr.write(`${command.file}: ${teachErrorWords(assessed.error)}\n`);
    return 1;
  }
  const summary = summariseAssessment(assessed.value);
  const unknown = await assessSamples(sniffs, { ...options, split: "dish", withoutNets: true });
  const untaught = unknown.ok ? unknownFood(unknown.value) : null;
  const sampleSet = assessSampleSet(assessed.value, seed);
  process.stdout.write(
    assessText(assessed.value, summary, { path, split, seed, rate: acceptedMissRate, givenFolds }),
  );
  process.stdout.write(`\n${sampleSetText(sampleSet)}${untaught === null ? "" : unknownFoodText(untaught)}`);
  if (command.reportOut !== undefined) {
    const { prepared: _, sniffs: _sniffs, rivals: _rivals, ...rest } = assessed.value;
    writeFileSync(
      command.reportOut,
      `${JSON.stringify({ ...rest, summary, sampleSet, untaught }, null, 2)}\n`,
    );
  }
  if (command.jsonOut !== undefined) {
    const lines = assessed.value.sniffs.map((sniff) => `${JSON.stringify(sniff)}\n`);
    writeFileSync(command.jsonOut, lines.join(""));
  }
  return refused > 0 ? 1 : 0;
}
