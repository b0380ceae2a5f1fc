/** The worker's entry: teaches or moves one nose at a time, tells how far it is, and stops when asked to. */
import { err, ok, type Result } from "../kernel/result.js";
import { compareNoses } from "../nose/compareNoses.js";
import type { Nose } from "../nose/nose.js";
import { parseNose, serialiseNose } from "../nose/noseFile.js";
import type { GroupComparison } from "../nose/report.js";
import { tellFresh } from "../nose/tellFresh.js";
import type { Sniff } from "../sniff/sniff.js";
import { chooseBackend } from "../teaching/backend.js";
import { checkedNose, withSampleChecks } from "../teaching/checkSamples.js";
import { refreshWithGain } from "../teaching/refreshWithGain.js";
import { teachNose, type TeachOptions } from "../teaching/teachNose.js";
import { transferring } from "../transfer/transferNose.js";
import type {
  FromTeachWorker,
  JobFailure,
  Taught,
  TeachFailure,
  TeachJob,
  TeachProgress,
  ToTeachWorker,
  TransferAnswer,
  TransferJob,
} from "./protocol.js";
import { seldom } from "./seldom.js";
import { createWorkerCrew, type FitPort } from "./workerCrew.js";

let backend: Promise<string> | null = null;
/** The job that runs, and whether its checks are still wanted. */
let running: { readonly request: number; checks: boolean } | null = null;

/** Workers that fit beside this one, which works too: more than these a phone hardly has cores for at once. */
const MOST_HANDS = 4;
const crew = createWorkerCrew(
  () => new Worker(new URL("./fitWorker.ts", import.meta.url), { type: "module" }) as FitPort,
  Math.max(1, Math.min(MOST_HANDS, navigator.hardwareConcurrency - 1)),
);

/** Samples that came ahead of their job. */
let ahead: { readonly request: number; readonly samples: Sniff[] } = { request: 0, samples: [] };

const tell = (message: FromTeachWorker) => postMessage(message);

/** The page draws itself anew for each: more often than an eye follows, it would keep taps waiting. */
const PROGRESS_EVERY_MS = 250;

/** Tells how far a stage is, now and then. */
const progressOf = (request: number, stage: TeachProgress["stage"]) =>
  seldom<number>(
    (done) => tell({ kind: "progress", request, progress: { stage, done } }),
    PROGRESS_EVERY_MS,
    () => performance.now(),
  );

async function teach(request: number, job: TeachJob): Promise<void> {
  const own = { request, checks: true };
  running = own;
  backend ??= chooseBackend({ wasmPath: job.wasmPath, nowMs: () => performance.now() });
  // Whoever waits for it hears of a fault; until then nobody does, and that is no fault of its own.
  backend.catch(() => undefined);
  const options: TeachOptions = {
    seed: job.seed,
    id: job.noseId,
    name: job.name,
    taughtAt: job.taughtAt,
    backend,
    crew,
    onProgress: progressOf(request, "teaching"),
    isCancelled: () => running !== own,
  };
  const nose = job.refresh ? await refreshed(job, options) : await taughtAnew(job, options);
  if (!nose.ok) {
    running = null;
    return tell({ kind: "done", request, result: nose });
  }
  tell({ kind: "progress", request, progress: { stage: "checks", done: 0 } });
  const checked = await checkedIn(job, nose.value, {
    ...options,
    onProgress: progressOf(request, "checks"),
    isCancelled: () => running !== own || !own.checks,
  });
  // A refresh shows its gain on fresh plates; there is nothing else that both noses could be tried on alike.
  const compared = job.inUse === null || job.refresh ? [] : compareNoses(job.inUse, checked, job.samples);
  const cancelled = running !== own;
  running = null;
  const result = cancelled ? err({ kind: "cancelled" } as const) : readBack(checked, compared);
  tell({ kind: "done", request, result });
}

/** What cannot be read back from its file is no nose. Here, because reading it takes longer than a tap may wait. */
function readBack(nose: Nose, compared: readonly GroupComparison[]): Result<Taught, JobFailure> {
  const read = parseNose(serialiseNose(nose));
  return read.ok ? ok({ nose: read.value, compared }) : err({ kind: "badNose", error: read.error });
}

async function taughtAnew(job: TeachJob, options: TeachOptions): Promise<Result<Nose, TeachFailure>> {
  const taught = await teachNose(job.samples, options);
  return taught.ok ? ok(taught.value.nose) : taught;
}

async function refreshed(job: TeachJob, options: TeachOptions): Promise<Result<Nose, TeachFailure>> {
  if (job.inUse === null) return err({ kind: "failed", detail: "there is no nose to refresh" });
  const isFresh = tellFresh(job.inUse);
  const fresh: Sniff[] = [];
  const known: Sniff[] = [];
  for (const sniff of job.samples)
    (isFresh({ ...sniff, snifferId: sniff.sniffer.id }) ? fresh : known).push(sniff);
  return refreshWithGain(job.inUse, known, fresh, options);
}

/** Lets a word to stop arrive. */
const letWordsIn = () => new Promise((resolve) => setTimeout(resolve, 0));

async function transfer(request: number, { nose, samples, options }: TransferJob): Promise<TransferAnswer> {
  const own = { request, checks: false };
  running = own;
  const tellDone = progressOf(request, "teaching");
  const steps = transferring(nose, samples, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) {
      if (!step.value.ok) return step.value;
      const { nose: moved, comparison: compared } = step.value.value;
      return readBack(moved, compared);
    }
    tellDone(step.value);
    await letWordsIn();
    if (running !== own) return err({ kind: "cancelled" });
  }
}

/** Held out by occasion only where the nose was taught anew: a refresh leans on few fresh plates of one sitting. */
async function checkedIn(job: TeachJob, nose: Nose, options: TeachOptions): Promise<Nose> {
  await letWordsIn();
  if (!job.refresh) return checkedNose(nose, job.samples, options);
  return options.isCancelled?.() === true ? nose : withSampleChecks(nose, job.samples, options.seed);
}

/** The samples that came ahead of a job; they are let go with it. */
function samplesOf(request: number): readonly Sniff[] {
  const { samples } = ahead.request === request ? ahead : { samples: [] };
  ahead = { request: 0, samples: [] };
  return samples;
}

addEventListener("message", ({ data }: MessageEvent<ToTeachWorker>) => {
  const { request } = data;
  switch (data.kind) {
    case "cancel":
      if (running?.request === request) running = null;
      return;
    case "skipChecks":
      if (running?.request === request) running.checks = false;
      return;
    case "compare": {
      const compared = compareNoses(data.job.older, data.job.newer, samplesOf(request));
      return tell({ kind: "compared", request, compared });
    }
    case "transfer":
      void transfer(request, { ...data.job, samples: samplesOf(request) })
        .catch((cause: unknown) => err({ kind: "failed", detail: String(cause) } as const))
        .then((result) => {
          if (running?.request === request) running = null;
          tell({ kind: "transferred", request, result });
        });
      return;
    case "samples":
      if (ahead.request !== request) ahead = { request, samples: [] };
      ahead.samples.push(...data.samples);
      return;
    case "teach":
      void teach(request, { ...data.job, samples: samplesOf(request) })
        .catch((cause: unknown) => {
          running = null;
          // A backend that failed to start may start the next time.
          backend = null;
          tell({ kind: "done", request, result: err({ kind: "failed", detail: String(cause) }) });
        })
        .finally(() => crew.dismiss());
  }
});
