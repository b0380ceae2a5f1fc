/**
 * Cost figures in processor seconds, in Node, and what a phone has to load: npm run bench. With --long more of them; with
 * --browser the cost of teaching in Chromium, and how soon taps are answered. Ends with 1 where a budget is not kept.
 */
import { spawnSync } from "node:child_process";
import { parseArgs } from "node:util";
import * as tf from "@tensorflow/tfjs";
import { findPlate } from "../../src/finding/findPlate.js";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { type NetJob, teachNets } from "../../src/teaching/teachNets.js";
import { teachNose } from "../../src/teaching/teachNose.js";
import { syntheticSniffs } from "../teaching/syntheticSniffs.js";
import { traceFrameMs } from "./traceFrame.js";
import { useWasm } from "../teaching/useBackend.js";
import { browserCost } from "./browserCost.js";

const FEATURES = 40;
const GROUPS = 4;
const JOBS = 11; // ten folds and the final one
const MEMBERS = 5;
const HIDDEN = 16;
const STEPS = 80; // as in src/teaching/teachNose.ts

const options = { seed: 1, id: "bench", name: "bench", taughtAt: "2026-11-25T18:30:00Z" };
const groups = ["meat", "fish", "egg", "nut"];

const print = (line: string) => process.stdout.write(`${line}\n`);
/** Processor time of this process: on a busy machine the wall clock measures the others. */
const nowMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const seconds = (from: number) => (nowMs() - from) / 1000;

function randomData(rows: number) {
  const random = seededRandom(rows);
  const x = Float64Array.from({ length: rows * FEATURES }, () => standardNormal(random));
  const truth = Int8Array.from({ length: rows * GROUPS }, (_, at) =>
    x[Math.floor(at / GROUPS) * FEATURES + (at % GROUPS)]! + 0.5 * standardNormal(random) > 0 ? 1 : 0,
  );
  return { x, truth };
}

async function batchedSeconds(rows: number): Promise<number> {
  const { x, truth } = randomData(rows);
  const jobs: NetJob[] = Array.from({ length: JOBS }, (_, fold) => ({
    x: [x],
    weight: Float64Array.from({ length: rows }, (_row, row) => (row % 10 === fold ? 0 : 1)),
  }));
  const plates = Int32Array.from({ length: rows }, (_, row) => row);
  const settings = {
    rows,
    features: FEATURES,
    groups: GROUPS,
    truth,
    plates,
    members: MEMBERS,
    hidden: HIDDEN,
    steps: STEPS,
  };
  const control = { random: seededRandom(1), isCancelled: () => false, onProgress: () => undefined };
  const before = nowMs();
  await teachNets(jobs, settings, control);
  return seconds(before);
}

/** One model.fit: full batches, the same layers, steps and optimizer. */
async function naiveFitSeconds(rows: number): Promise<number> {
  const { x, truth } = randomData(rows);
  const model = tf.sequential();
  model.add(tf.layers.dense({ units: HIDDEN, activation: "tanh", inputShape: [FEATURES] }));
  model.add(tf.layers.dense({ units: GROUPS, activation: "sigmoid" }));
  model.compile({ optimizer: tf.train.adam(0.03), loss: "binaryCrossentropy" });
  const inputs = tf.tensor2d(Float32Array.from(x), [rows, FEATURES]);
  const targets = tf.tensor2d(Float32Array.from(truth), [rows, GROUPS]);
  const before = nowMs();
  await model.fit(inputs, targets, { epochs: STEPS, batchSize: rows, verbose: 0, validationSplit: 0.2 });
  const took = seconds(before);
  model.dispose();
  tf.dispose([inputs, targets]);
  return took;
}

async function netCosts(sizes: readonly number[]): Promise<void> {
  print(`${JOBS} folds x ${MEMBERS} members, ${FEATURES} x ${HIDDEN} x ${GROUPS}, at most ${STEPS} steps`);
  await batchedSeconds(50);
  for (const rows of sizes) {
    const took = await batchedSeconds(rows);
    const each = ((1000 * took) / rows).toFixed(1);
    print(`nets, ${rows} sniffs, batched: ${took.toFixed(1)} s (${each} ms a sniff)`);
  }
}

async function naiveRatio(rows: number): Promise<void> {
  await naiveFitSeconds(50);
  const one = await naiveFitSeconds(rows);
  const batched = await batchedSeconds(rows);
  const all = one * JOBS * MEMBERS;
  print(
    `the naive way, one model.fit a fold and member, ${rows} sniffs: ${one.toFixed(2)} s each, ` +
      `${all.toFixed(1)} s for ${JOBS * MEMBERS}; ratio ${(all / batched).toFixed(1)}`,
  );
}

/** Seven channels give 41 features under the recipe that is tried first. */
async function wholeNose(plates: number): Promise<void> {
  const samples = syntheticSniffs({ plates, seed: 3, groups, sweeps: 20, channels: 7 });
  const before = nowMs();
  const taught = await teachNose(samples, options);
  const took = seconds(before);
  if (!taught.ok) throw new Error(taught.error.kind);
  print(
    `a whole nose from ${plates} sniffs (recipe ${taught.value.nose.recipe}, ${taught.value.nose.chosen}), ` +
      `all models, calibration and evidence: ${took.toFixed(1)} s (${((1000 * took) / plates).toFixed(1)} ms a sniff)`,
  );
  const request = { groups, acceptedMissRate: 0.1, allergyGroups: [] };
  findPlate(taught.value.nose, samples[0]!, request);
  const start = nowMs();
  for (const sniff of samples.slice(0, 50)) findPlate(taught.value.nose, sniff, request);
  print(`  one finding: ${((1000 * seconds(start)) / 50).toFixed(1)} ms`);
}

function traceCosts(): void {
  for (const channels of [8, 64]) {
    traceFrameMs(channels, 600, nowMs); // warms the compiler up
    const minute = traceFrameMs(channels, 600, nowMs);
    const hour = traceFrameMs(channels, 36_000, nowMs);
    print(
      `live traces, ${channels} channels at 10 sweeps a second: a frame ${minute.toFixed(2)} ms after a minute, ` +
        `${hour.toFixed(2)} ms after an hour (${(hour / minute).toFixed(2)} times)`,
    );
  }
}

async function tensorsLeft(): Promise<void> {
  const tensors = tf.memory().numTensors;
  const few = syntheticSniffs({ plates: 12, seed: 4 });
  for (let again = 0; again < 10; again += 1) await teachNose(few, options);
  print(`tensors before and after ten teachings: ${tensors} and ${tf.memory().numTensors}`);
}

/** Runs a command whose failing fails the whole. */
function command(name: "npm" | "npx", ...words: readonly string[]): void {
  const { status } = spawnSync(name, words, { stdio: "inherit", shell: process.platform === "win32" });
  if (status !== 0) process.exitCode = status ?? 1;
}

const { values } = parseArgs({ options: { long: { type: "boolean" }, browser: { type: "boolean" } } });
if (values.browser === true) {
  await browserCost(print);
  command("npm", "run", "bench:browser");
} else {
  print(`backend ${await useWasm()}; processor seconds`);
  await netCosts(values.long === true ? [100, 400, 1000, 2000] : [100, 400]);
  await naiveRatio(values.long === true ? 400 : 100);
  for (const plates of values.long === true ? [100, 400, 1000, 2000] : [50, 100]) await wholeNose(plates);
  await tensorsLeft();
  traceCosts();
  command("npx", "vitest", "bench", "--run", "--project", "unit");
  command("npm", "run", "size");
}
