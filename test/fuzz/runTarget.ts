/** Runs one target case by case, each from its own seed, and holds each case to a time. */
import { Worker } from "node:worker_threads";
import { seededRandom, type RandomSource } from "../../src/kernel/random.js";

export interface FuzzTarget {
  readonly name: string;
  /** One case. Throws where a promise is broken: a crash and a broken promise look alike from here. */
  readonly run: (random: RandomSource) => Promise<boolean> | boolean;
}

export interface FuzzOutcome {
  readonly name: string;
  readonly cases: number;
  /** Cases in which the decoder accepted something: a run without any has tried only refusals. */
  readonly accepted: number;
  readonly slowestMs: number;
  /** What went wrong, with the seed that shows it again; a few at most. */
  readonly faults: readonly { readonly seed: number; readonly cause: string }[];
}

/** A case beyond this is a hang in the making. Usual cases take less than a millisecond; other work may share the machine. */
const SLOWEST_CASE_MS = 2000;
/** A case beyond this will not come back by itself: the process is ended, and the case is named. */
const HANGING_MS = 20_000;
const MOST_FAULTS = 5;

/** Case `i` of a run has the seed `firstSeed + i`, so that one case can be run again alone. */
export async function runTarget(target: FuzzTarget, cases: number, firstSeed: number): Promise<FuzzOutcome> {
  const guard = startGuard(target.name);
  const faults: { seed: number; cause: string }[] = [];
  let accepted = 0;
  let slowestMs = 0;
  let done = 0;
  for (; done < cases && faults.length < MOST_FAULTS; done += 1) {
    const seed = firstSeed + done;
    guard.begin(seed);
    const before = performance.now();
    try {
      if (await target.run(seededRandom(seed))) accepted += 1;
    } catch (cause) {
      faults.push({ seed, cause: cause instanceof Error ? (cause.stack ?? String(cause)) : String(cause) });
    }
    const tookMs = performance.now() - before;
    slowestMs = Math.max(slowestMs, tookMs);
    if (tookMs > SLOWEST_CASE_MS) faults.push({ seed, cause: `took ${Math.round(tookMs)} ms` });
  }
  await guard.end();
  return { name: target.name, cases: done, accepted, slowestMs, faults };
}

/** Watches from another thread, since a hanging one cannot watch itself. */
function startGuard(name: string) {
  const shared = new BigInt64Array(new SharedArrayBuffer(8));
  const code = `
    const { workerData } = require("node:worker_threads");
    let last = workerData.shared[0], since = Date.now();
    setInterval(() => {
      const now = Atomics.load(workerData.shared, 0);
      if (now !== last) { last = now; since = Date.now(); }
      else if (Date.now() - since > workerData.hangingMs) {
        require("node:fs").writeSync(2, "fuzz: " + workerData.name + " hangs at seed " + now + "\\n");
        process.kill(process.pid, "SIGKILL");
      }
    }, 500);`;
  const workerData = { shared, name, hangingMs: HANGING_MS };
  const worker = new Worker(code, { eval: true, execArgv: [], workerData });
  return {
    begin: (seed: number) => Atomics.store(shared, 0, BigInt(seed)),
    end: () => worker.terminate(),
  };
}
