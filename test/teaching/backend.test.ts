// Which backend is taken, by a clock that the test moves: the names in the list are all tried, wherever they stand in it.
import * as tf from "@tensorflow/tfjs";
import { createRequire } from "node:module";
import { dirname, sep } from "node:path";
import { afterAll, expect, it } from "vitest";
import { chooseBackend } from "../../src/teaching/backend.js";

const wasmPath = `${dirname(createRequire(import.meta.url).resolve("@tensorflow/tfjs-backend-wasm"))}${sep}`;

/** A clock that goes on by what a reading costs with the backend in use, and notes which were asked. */
function clockOf(msOf: Readonly<Record<string, number>>) {
  const asked = new Set<string>();
  let now = 0;
  return {
    asked,
    nowMs: () => {
      asked.add(tf.getBackend());
      return (now += msOf[tf.getBackend()] ?? 1000);
    },
  };
}

// Plain JavaScript under another name stands for a backend that somebody adds.
tf.registerBackend("added", tf.findBackendFactory("cpu"));
tf.copyRegisteredKernels("cpu", "added");
afterAll(() => {
  tf.removeBackend("added");
});

it("takes the fastest, though it stands behind one that this device has not", async () => {
  const { asked, nowMs } = clockOf({ wasm: 10, added: 5, cpu: 1 });
  expect(await chooseBackend({ wasmPath, names: ["wasm", "webgl", "added", "cpu"], nowMs })).toBe("added");
  expect(asked).toEqual(new Set(["wasm", "added"])); // plain JavaScript is not waited for beside WASM
});

it("keeps WASM where what was added is slower", async () => {
  const { nowMs } = clockOf({ wasm: 10, added: 20 });
  expect(await chooseBackend({ wasmPath, names: ["wasm", "added", "cpu"], nowMs })).toBe("wasm");
  expect(tf.getBackend()).toBe("wasm");
});

it("falls back to plain JavaScript without WASM's files", async () => {
  const { nowMs } = clockOf({ cpu: 1 });
  expect(await chooseBackend({ names: ["wasm", "webgl", "cpu"], nowMs })).toBe("cpu");
});
