/** The page's side of the measurement: teaches as the app does, and watches its own main thread. */
import { findPlate } from "../../../src/finding/findPlate.js";
import { createTeachClient, type TeachPort } from "../../../src/worker/teachClient.js";
import { syntheticSniffs } from "../../teaching/syntheticSniffs.js";
import type { MemoryAnswer } from "./memoryWorker.js";

export interface BrowserCost {
  /** From the start to a nose that can be used, ms. */
  readonly teachMs: number;
  /** The checks of the samples after it, which can be left out, ms. */
  readonly checksMs: number;
  readonly backend: string;
  readonly model: string;
  readonly features: string;
  /** Tasks of the main thread over 50 ms (W3C Long Tasks), from the start of teaching to the nose in hand, ms. */
  readonly longTasks: readonly number[];
  readonly findingMs: number;
}

declare global {
  interface Window {
    measureTeaching(sniffs: number): Promise<BrowserCost>;
    measureMemory(times: number): Promise<MemoryAnswer>;
  }
}

const GROUPS = ["meat", "fish", "egg", "nut"];
const wasmPath = new URL("./wasm/", location.href).href;

window.measureTeaching = async (count) => {
  const samples = syntheticSniffs({ plates: count, seed: 3, groups: GROUPS, sweeps: 20, channels: 7 });
  const client = createTeachClient(
    () =>
      new Worker(new URL("../../../src/worker/teachWorker.ts", import.meta.url), {
        type: "module",
      }) as TeachPort,
  );
  // The samples were made in this task: it must end before the watch begins.
  await new Promise((resolve) => setTimeout(resolve, 0));
  const longTasks: number[] = [];
  const watch = new PerformanceObserver((list) =>
    longTasks.push(...list.getEntries().map((one) => one.duration)),
  );
  watch.observe({ entryTypes: ["longtask"] });
  const before = performance.now();
  const job = {
    samples,
    seed: 1,
    noseId: "b",
    name: "b",
    taughtAt: "2026-11-25T18:30:00Z",
    wasmPath,
    inUse: null,
    refresh: false,
  };
  let ready = NaN;
  const taught = await client.teach(job, ({ stage }) => {
    if (stage === "checks" && Number.isNaN(ready)) ready = performance.now();
  });
  if (!taught.ok) throw new Error(JSON.stringify(taught.error));
  const checksMs = performance.now() - ready;
  const { nose } = taught.value;
  // A long task is told of a moment after it ended.
  await new Promise((resolve) => setTimeout(resolve, 500));
  watch.disconnect();
  const request = { groups: GROUPS, acceptedMissRate: 0.1, allergyGroups: [] };
  findPlate(nose, samples[0]!, request);
  const start = performance.now();
  for (const sniff of samples.slice(0, 50)) findPlate(nose, sniff, request);
  return {
    teachMs: ready - before,
    checksMs,
    backend: nose.report.backend,
    model: nose.chosen,
    features: `recipe ${nose.recipe}, ${nose.horizons[0]!.input.centre.length} features`,
    longTasks,
    findingMs: (performance.now() - start) / 50,
  };
};

window.measureMemory = (times) =>
  new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./memoryWorker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<MemoryAnswer>) => resolve(data);
    worker.onerror = ({ message }) => reject(new Error(message));
    worker.postMessage({ times, wasmPath });
  });
