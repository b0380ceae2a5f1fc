/** The entry of a worker beside the teaching worker: fits plain models, one job after the other. No TensorFlow.js. */
import { doPlainJob } from "../teaching/plainJobs.js";
import type { FromFitWorker, ToFitWorker } from "./workerCrew.js";

const tell = (message: FromFitWorker) => postMessage(message);

addEventListener("message", ({ data }: MessageEvent<ToFitWorker>) => {
  try {
    tell({ ok: true, answer: doPlainJob(data) });
  } catch (cause) {
    tell({ ok: false, detail: cause instanceof Error ? cause.message : String(cause) });
  }
});
