/** Which part of the device computes: chosen by measurement, not by guess. */
import * as tf from "@tensorflow/tfjs";
import { setWasmPaths } from "@tensorflow/tfjs-backend-wasm";

export interface BackendOptions {
  /** Folder or URL prefix of the .wasm files, with a slash at its end; WASM is not tried if left out. */
  readonly wasmPath?: string | undefined;
  /** Names to try; all that this build carries if left out. */
  readonly names?: readonly string[] | undefined;
  /** A clock in milliseconds. */
  readonly nowMs: () => number;
}

/** A step of about the size of real teaching: fewer nets, the same matrices. */
const TRIAL = { nets: 8, rows: 200, features: 40, hidden: 16 };

/** Timed steps, of which the quickest counts: the others were interrupted. */
const TRIALS = 3;

/**
 * Makes the fastest backend the one in use.
 *
 * @returns its name; "cpu" always works
 */
export async function chooseBackend(options: BackendOptions): Promise<string> {
  if (options.wasmPath !== undefined) setWasmPaths(options.wasmPath);
  let best = { name: "cpu", ms: Infinity };
  let wasmAnswers = false;
  for (const name of options.names ?? ["wasm", "webgl", "cpu"]) {
    if (name === "wasm" && options.wasmPath === undefined) continue;
    // Plain JavaScript is several times slower than WASM everywhere measured: no need to wait for it.
    if (name === "cpu" && wasmAnswers) continue;
    // An imitated graphics processor computes on the same cores as WASM, by a detour that takes seconds to make ready.
    if (name === "webgl" && wasmAnswers && isGraphicsImitated()) continue;
    const ms = await trialMs(name, options.nowMs);
    wasmAnswers ||= name === "wasm" && ms < Infinity;
    if (ms < best.ms) best = { name, ms };
  }
  await tf.setBackend(best.name);
  await tf.ready();
  return best.name;
}

/** @see Khronos, WebGL Specification 1.0, section 5.2 (failIfMajorPerformanceCaveat) */
function isGraphicsImitated(): boolean {
  if (typeof OffscreenCanvas === "undefined") return false;
  return new OffscreenCanvas(1, 1).getContext("webgl", { failIfMajorPerformanceCaveat: true }) === null;
}

async function trialMs(name: string, nowMs: () => number): Promise<number> {
  try {
    if (!(await tf.setBackend(name))) return Infinity;
    await tf.ready();
    await trialStep();
    let least = Infinity;
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const before = nowMs();
      await trialStep();
      least = Math.min(least, nowMs() - before);
    }
    return least;
  } catch {
    return Infinity;
  }
}

async function trialStep(): Promise<void> {
  const out = tf.tidy(() => {
    const x = tf.ones([TRIAL.nets, TRIAL.rows, TRIAL.features]) as tf.Tensor3D;
    const w = tf.fill([TRIAL.nets, TRIAL.features, TRIAL.hidden], 0.01) as tf.Tensor3D;
    const gradient = tf.grad((weights) => tf.sum(tf.tanh(tf.matMul(x, weights as tf.Tensor3D))));
    return gradient(w);
  });
  await out.data();
  out.dispose();
}
