/**
 * Teaches models/demo.nose.json from models/demo.sniffs.jsonl and writes the model card.
 * Run: npx tsx src/cli/makeDemoNose.ts
 */
import { readFileSync, writeFileSync } from "node:fs";
import { serialiseNose } from "../nose/noseFile.js";
import { readSniffFile } from "../sniff/sniffFile.js";
import { assessSampleSet } from "../teaching/assessSampleSet.js";
import { checkedNose } from "../teaching/checkSamples.js";
import { assessSamples } from "../teaching/assessSamples.js";
import { summariseAssessment } from "../teaching/summariseAssessment.js";
import { teachNose, type TeachOptions } from "../teaching/teachNose.js";
import { assessText } from "./assessText.js";
import { modelCard } from "./modelCard.js";
import { sampleSetText } from "./sampleSetText.js";
import { startBackend } from "./startBackend.js";

const models = new URL("../../models/", import.meta.url);
/** Fixed, so that running this again gives the same nose. */
const SEED = 1;
const TAUGHT_AT = "2026-11-25T18:30:00.000Z";
const MISS_RATE = 0.1;

const { sniffs, faults } = readSniffFile(readFileSync(new URL("demo.sniffs.jsonl", models), "utf8"));
if (faults.length > 0) throw new Error(`the demo samples have ${faults.length} bad lines`);
const backend = await startBackend();
const teaching: TeachOptions = {
  seed: SEED,
  id: "demo",
  name: "Demo nose (virtual sniffer)",
  taughtAt: TAUGHT_AT,
  backend,
};
const taught = await teachNose(sniffs, teaching);
if (!taught.ok) throw new Error(`nothing was taught: ${taught.error.kind}`);
const nose = await checkedNose(taught.value.nose, sniffs, teaching);
const fileText = serialiseNose(nose);
writeFileSync(new URL("demo.nose.json", models), fileText);

const reports: string[] = [];
for (const split of ["plate", "occasion"] as const) {
  const assessed = await assessSamples(sniffs, {
    split,
    folds: 5,
    seed: SEED,
    acceptedMissRate: MISS_RATE,
    backend,
  });
  if (!assessed.ok) throw new Error(`nothing was assessed: ${assessed.error.kind}`);
  const options = { path: "models/demo.sniffs.jsonl", split, seed: SEED, rate: MISS_RATE };
  reports.push(assessText(assessed.value, summariseAssessment(assessed.value), options));
  if (split === "plate") reports[0] += `\n${sampleSetText(assessSampleSet(assessed.value, SEED))}`;
}
writeFileSync(new URL("README.md", models), modelCard(nose, sniffs, fileText.length, reports));
process.stdout.write(`models/demo.nose.json: ${fileText.length} characters\n${reports.join("\n")}`);
