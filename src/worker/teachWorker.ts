/** The worker's entry: teaches one nose at a time, tells how far it is, and stops when asked to. */
import { err, ok } from "../kernel/result.js";
import { serialiseNose } from "../nose/noseFile.js";
import { chooseBackend } from "../teaching/backend.js";
import { teachNose } from "../teaching/teachNose.js";
import type { FromTeachWorker, TeachJob, ToTeachWorker } from "./protocol.js";

let backend: Promise<string> | null = null;
let running: number | null = null;

const tell = (message: FromTeachWorker) => postMessage(message);

async function teach(request: number, job: TeachJob): Promise<void> {
  running = request;
  backend ??= chooseBackend({ wasmPath: job.wasmPath, nowMs: () => performance.now() });
  const taught = await teachNose(job.samples, {
    seed: job.seed,
    id: job.noseId,
    name: job.name,
    taughtAt: job.taughtAt,
    backend: await backend,
    onProgress: (done) => tell({ kind: "progress", request, progress: { done } }),
    isCancelled: () => running !== request,
  });
  running = null;
  const result = taught.ok ? ok({ noseText: serialiseNose(taught.value.nose) }) : err(taught.error);
  tell({ kind: "done", request, result });
}

addEventListener("message", ({ data }: MessageEvent<ToTeachWorker>) => {
  if (data.kind === "cancel") {
    if (running === data.request) running = null;
    return;
  }
  teach(data.request, data.job).catch((cause: unknown) => {
    running = null;
    // A backend that failed to start may start the next time.
    backend = null;
    tell({ kind: "done", request: data.request, result: err({ kind: "failed", detail: String(cause) }) });
  });
});
