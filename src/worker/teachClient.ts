/** The page's side of teaching: starts the worker when first needed, numbers requests, survives a crash. */
import { err, type Result } from "../kernel/result.js";
import type {
  FromTeachWorker,
  TeachFailure,
  TeachJob,
  Taught,
  TeachProgress,
  ToTeachWorker,
} from "./protocol.js";

export interface TeachClient {
  /** One job at a time; a second one waits for nothing and is refused as `busy`. */
  teach(job: TeachJob, onProgress: (progress: TeachProgress) => void): Promise<Result<Taught, TeachFailure>>;
  cancel(): void;
}

/** What the client needs of a worker: a real one in the app, a fake one in tests. */
export interface TeachPort {
  postMessage(message: ToTeachWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromTeachWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

interface Running {
  readonly request: number;
  readonly onProgress: (progress: TeachProgress) => void;
  readonly finish: (result: Result<Taught, TeachFailure>) => void;
}

export function createTeachClient(startWorker: () => TeachPort): TeachClient {
  let port: TeachPort | null = null;
  let running: Running | null = null;
  let requests = 0;

  function finish(result: Result<Taught, TeachFailure>): void {
    const ended = running;
    running = null;
    ended?.finish(result);
  }

  function listen({ data }: { data: FromTeachWorker }): void {
    if (running === null || data.request !== running.request) return;
    if (data.kind === "progress") running.onProgress(data.progress);
    else finish(data.result);
  }

  /** A dead worker is thrown away: the next job starts a fresh one. */
  function crashed(detail: string): void {
    port?.terminate();
    port = null;
    finish(err({ kind: "workerCrashed", detail }));
  }

  function ensurePort(): TeachPort {
    if (port !== null) return port;
    port = startWorker();
    port.onmessage = listen;
    port.onerror = (event) => {
      event.preventDefault?.();
      crashed(event.message ?? "the worker could not be started");
    };
    return port;
  }

  return {
    teach: (job, onProgress) => {
      if (running !== null) return Promise.resolve(err({ kind: "busy" }));
      requests += 1;
      const request = requests;
      return new Promise((resolve) => {
        running = { request, onProgress, finish: resolve };
        ensurePort().postMessage({ kind: "teach", request, job });
      });
    },
    cancel: () => {
      if (running === null) return;
      port?.postMessage({ kind: "cancel", request: running.request });
    },
  };
}
