import { beforeAll, expect, it } from "vitest";
import { seededRandom, standardNormal } from "../../src/kernel/random.js";
import { netLogits } from "../../src/nose/netLogits.js";
import { chooseBackend } from "../../src/teaching/backend.js";
import { netLogitsByTensorFlow, teachNets } from "../../src/teaching/teachNets.js";
import { useWasm } from "./useBackend.js";

const ROWS = 60;
const FEATURES = 5;
const random = seededRandom(4);
const X = Float64Array.from({ length: ROWS * FEATURES }, () => standardNormal(random));
/** Exclusive or of the signs of two features: no straight line tells it. */
const TRUTH = Int8Array.from({ length: ROWS }, (_, row) =>
  X[row * FEATURES]! * X[row * FEATURES + 1]! > 0 ? 1 : 0,
);
const SETTINGS = {
  rows: ROWS,
  features: FEATURES,
  groups: 1,
  truth: TRUTH,
  plates: Int32Array.from({ length: ROWS }, (_, row) => row),
  members: 2,
  hidden: 8,
  steps: 120,
};
const control = (seed: number) => ({
  random: seededRandom(seed),
  isCancelled: () => false,
  onProgress: () => undefined,
});
const row = (i: number) => X.subarray(i * FEATURES, (i + 1) * FEATURES);

beforeAll(useWasm);

it("learns what no straight line can, and its plain forward pass is TensorFlow's to 1e-5", async () => {
  const jobs = [{ x: [X], weight: new Float64Array(ROWS).fill(1) }];
  const [nets] = (await teachNets(jobs, SETTINGS, control(1)))!;
  const theirs = await netLogitsByTensorFlow(nets!, X, ROWS);
  let hits = 0;
  for (let i = 0; i < ROWS; i += 1) {
    const [ours] = netLogits(nets!, row(i));
    expect(Math.abs(ours! - theirs[i]!)).toBeLessThan(1e-5);
    if (ours! > 0 === (TRUTH[i] === 1)) hits += 1;
  }
  expect(hits / ROWS).toBeGreaterThan(0.8);
});

it("rows that weigh nothing teach nothing: their truths may be anything", async () => {
  const weight = Float64Array.from({ length: ROWS }, (_, i) => (i < 40 ? 1 : 0));
  const flipped = TRUTH.map((one, i) => (i < 40 ? one : 1 - one));
  const one = await teachNets([{ x: [X], weight }], SETTINGS, control(2));
  const other = await teachNets([{ x: [X], weight }], { ...SETTINGS, truth: flipped }, control(2));
  expect(other).toEqual(one);
});

it("an unknown truth is masked: the group's net is the same as without the row", async () => {
  const unknown = TRUTH.map((one, i) => (i < 40 ? one : -1));
  const weight = Float64Array.from({ length: ROWS }, (_, i) => (i < 40 ? 1 : 0));
  const masked = await teachNets(
    [{ x: [X], weight: weight.map(() => 1) }],
    { ...SETTINGS, truth: unknown, plates: Int32Array.from({ length: ROWS }, () => 0) },
    control(3),
  );
  const without = await teachNets(
    [{ x: [X], weight }],
    { ...SETTINGS, plates: Int32Array.from({ length: ROWS }, () => 0) },
    control(3),
  );
  masked![0]!.inWeights.forEach((value, i) => expect(value).toBeCloseTo(without![0]!.inWeights[i]!, 4));
});

it("falls back to plain JavaScript where nothing faster is there", async () => {
  expect(await chooseBackend({ nowMs: () => performance.now(), names: ["cpu"] })).toBe("cpu");
  await useWasm();
});
