/** The page's side of teaching: starts the worker when first needed, numbers requests, survives a crash. */
import { err, ok, type Result } from "../kernel/result.js";
import type { GroupComparison } from "../nose/report.js";
import type { Sniff } from "../sniff/sniff.js";
import type {
  CompareJob,
  FromTeachWorker,
  JobFailure,
  TeachFailure,
  TeachJob,
  Taught,
  TeachProgress,
  ToTeachWorker,
  TransferAnswer,
  TransferJob,
} from "./protocol.js";

export interface TeachClient {
  /** One job at a time; a second one waits for nothing and is refused as `busy`. */
  teach(job: TeachJob, onProgress: (progress: TeachProgress) => void): Promise<Result<Taught, TeachFailure>>;
  /** Puts two noses side by side. */
  compare(job: CompareJob): Promise<Result<readonly GroupComparison[], TeachFailure>>;
  /** Moves a nose to another sniffer. @param onProgress - is told a fraction */
  transfer(job: TransferJob, onProgress: (done: number) => void): Promise<TransferAnswer>;
  cancel(): void;
  /** Stops a transfer at once: the next job need not wait until the worker has noticed. */
  abandon(): void;
  /** Leaves out what is left of the checks; the nose that was taught is kept. */
  skipChecks(): void;
}

/** What the client needs of a worker: a real one in the app, a fake one in tests. */
export interface TeachPort {
  postMessage(message: ToTeachWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromTeachWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Samples in one message: copying them takes a few milliseconds on a phone. */
const STRETCH = 40;

type Answer = Exclude<FromTeachWorker, { kind: "progress" }>;

interface Running {
  readonly request: number;
  readonly onProgress: (progress: TeachProgress) => void;
  readonly finish: (answer: Result<Answer, JobFailure>) => void;
  /** Whether the worker knows of the job: its samples go ahead of it. */
  isSent: boolean;
}

/** Sends samples ahead of a job, and lets taps and frames in between. @returns false if it was no longer wanted */
async function sendAhead(
  samples: readonly Sniff[],
  request: number,
  isWanted: () => boolean,
  post: (message: ToTeachWorker) => void,
): Promise<boolean> {
  for (let from = 0; from < samples.length && isWanted(); from += STRETCH) {
    post({ kind: "samples", request, samples: samples.slice(from, from + STRETCH) });
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  return isWanted();
}

/** One job at a time, and who waits for it. */
function createDesk(startWorker: () => TeachPort) {
  let port: TeachPort | null = null;
  let running: Running | null = null;
  let requests = 0;

  function finish(answer: Result<Answer, JobFailure>): void {
    const ended = running;
    running = null;
    ended?.finish(answer);
  }

  function listen({ data }: { data: FromTeachWorker }): void {
    if (running === null || data.request !== running.request) return;
    if (data.kind === "progress") running.onProgress(data.progress);
    else finish(ok(data));
  }

  /** A dead worker is thrown away: the next job starts a fresh one. */
  function crashed(detail: string): void {
    port?.terminate();
    port = null;
    finish(err({ kind: "workerCrashed", detail }));
  }

  function post(message: ToTeachWorker): void {
    if (port === null) {
      port = startWorker();
      port.onmessage = listen;
      port.onerror = (event) => {
        event.preventDefault?.();
        crashed(event.message ?? "the worker could not be started");
      };
    }
    port.postMessage(message);
  }

  async function sendJob(own: Running, message: ToTeachWorker, samples: readonly Sniff[]): Promise<void> {
    const isWanted = () => running === own;
    // Without samples the job is sent at once.
    if (samples.length > 0 && !(await sendAhead(samples, own.request, isWanted, post))) return;
    own.isSent = true;
    post(message);
  }

  function ask(
    messageOf: (request: number) => ToTeachWorker,
    samples: readonly Sniff[],
    onProgress: Running["onProgress"],
  ): Promise<Result<Answer, JobFailure>> {
    if (running !== null) return Promise.resolve(err({ kind: "busy" }));
    requests += 1;
    const request = requests;
    return new Promise((resolve) => {
      running = { request, onProgress, finish: resolve, isSent: false };
      void sendJob(running, messageOf(request), samples);
    });
  }

  function send(kind: "cancel" | "skipChecks"): void {
    if (running?.isSent === true) port?.postMessage({ kind, request: running.request });
    else if (kind === "cancel") finish(err({ kind: "cancelled" }));
  }

  return { ask, send, finish };
}

export function createTeachClient(startWorker: () => TeachPort): TeachClient {
  const { ask, send, finish } = createDesk(startWorker);
  return {
    teach: async ({ samples, ...job }, onProgress) => {
      const answer = await ask((request) => ({ kind: "teach", request, job }), samples, onProgress);
      if (!answer.ok) return answer;
      return answer.value.kind === "done" ? answer.value.result : unexpected();
    },
    compare: async ({ samples, ...job }) => {
      const answer = await ask(
        (request) => ({ kind: "compare", request, job }),
        samples,
        () => undefined,
      );
      if (!answer.ok) return answer;
      return answer.value.kind === "compared" ? ok(answer.value.compared) : unexpected();
    },
    transfer: async ({ samples, ...job }, onProgress) => {
      const answer = await ask(
        (request) => ({ kind: "transfer", request, job }),
        samples,
        ({ done }) => onProgress(done),
      );
      if (!answer.ok) return answer;
      return answer.value.kind === "transferred" ? answer.value.result : unexpected();
    },
    cancel: () => send("cancel"),
    abandon: () => {
      send("cancel");
      finish(err({ kind: "cancelled" }));
    },
    skipChecks: () => send("skipChecks"),
  };
}

const unexpected = () =>
  err({ kind: "workerCrashed", detail: "the worker answered something else" } as const);
