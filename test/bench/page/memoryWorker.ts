/** Teaches again and again in one worker, and counts what TensorFlow.js still holds after each time. */
import * as tf from "@tensorflow/tfjs";
import { chooseBackend } from "../../../src/teaching/backend.js";
import { teachNose } from "../../../src/teaching/teachNose.js";
import { syntheticSniffs } from "../../teaching/syntheticSniffs.js";

export interface MemoryAnswer {
  readonly tensors: readonly number[];
  readonly bytes: readonly number[];
}

addEventListener("message", ({ data }: MessageEvent<{ times: number; wasmPath: string }>) => {
  void measure(data.times, data.wasmPath).then((answer) => postMessage(answer));
});

async function measure(times: number, wasmPath: string): Promise<MemoryAnswer> {
  await chooseBackend({ wasmPath, nowMs: () => performance.now() });
  const samples = syntheticSniffs({ plates: 40, seed: 4, sweeps: 12 });
  const tensors = [tf.memory().numTensors];
  const bytes = [tf.memory().numBytes];
  for (let time = 0; time < times; time += 1) {
    await teachNose(samples, { seed: time, id: "m", name: "m", taughtAt: "2026-11-25T18:30:00Z" });
    tensors.push(tf.memory().numTensors);
    bytes.push(tf.memory().numBytes);
  }
  return { tensors, bytes };
}
