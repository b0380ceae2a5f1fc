/** A crew of workers: each does one job at a time, so that a device with several cores teaches sooner. */
import { createLoneCrew, type Crew } from "../teaching/crew.js";
import type { AnswerTo, PlainAnswer, PlainJob } from "../teaching/plainJobs.js";

export type ToFitWorker = PlainJob;
export type FromFitWorker =
  { readonly ok: true; readonly answer: PlainAnswer } | { readonly ok: false; readonly detail: string };

/** What the crew needs of a worker: a real one in the app, a fake one in tests. */
export interface FitPort {
  postMessage(message: ToFitWorker): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<FromFitWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface WorkerCrew extends Crew {
  /** Sends the workers home, for they take memory; what they still had to do is cancelled. The next job starts new ones. */
  dismiss(): void;
}

interface Waiting {
  readonly job: PlainJob;
  readonly isCancelled: () => boolean;
  readonly resolve: (answer: PlainAnswer | null) => void;
  readonly reject: (cause: unknown) => void;
}

interface Hand {
  readonly port: FitPort;
  /** The jobs in hand, the one that is done first. */
  readonly at: Waiting[];
}

/** Jobs that a worker holds at a time: while its answer waits to be read, it has the next. */
const IN_HAND = 2;

/**
 * Starts workers when first needed. Where none can be started, or one dies, its job is done in this thread.
 *
 * @param startWorker - throws where workers cannot start workers
 * @param size - workers at most, whole, >= 1
 */
export function createWorkerCrew(startWorker: () => FitPort, size: number): WorkerCrew {
  const lone = createLoneCrew();
  const queue: Waiting[] = [];
  const hands: Hand[] = [];
  let canStart = true;

  function start(): Hand | null {
    if (!canStart || hands.length >= size) return null;
    try {
      const hand: Hand = { port: startWorker(), at: [] };
      hand.port.onmessage = ({ data }) => finish(hand, data);
      hand.port.onerror = (event) => {
        event.preventDefault?.();
        lose(hand);
      };
      hands.push(hand);
      return hand;
    } catch {
      canStart = false;
      return null;
    }
  }

  function idlest(): Hand | null {
    return hands.reduce<Hand | null>(
      (least, hand) => (least === null || hand.at.length < least.at.length ? hand : least),
      null,
    );
  }

  function finish(hand: Hand, message: FromFitWorker): void {
    const done = hand.at.shift();
    if (message.ok) done?.resolve(message.answer);
    else done?.reject(new Error(message.detail));
    handOut();
  }

  function lose(hand: Hand): void {
    canStart = false;
    hands.splice(hands.indexOf(hand), 1);
    hand.port.terminate();
    hand.at.forEach(alone);
    handOut();
  }

  function alone({ job, isCancelled, resolve, reject }: Waiting): void {
    lone.do(job, isCancelled).then(resolve, reject);
  }

  function handOut(): void {
    for (;;) {
      const next = queue[0];
      if (next === undefined) return;
      if (next.isCancelled()) {
        queue.shift();
        next.resolve(null);
        continue;
      }
      const hand = hands.find(({ at }) => at.length === 0) ?? start() ?? idlest();
      if (hand !== null && hand.at.length >= IN_HAND) return;
      queue.shift();
      if (hand === null) {
        alone(next);
        continue;
      }
      hand.at.push(next);
      hand.port.postMessage(next.job);
    }
  }

  return {
    do<Job extends PlainJob>(job: Job, isCancelled: () => boolean): Promise<AnswerTo<Job> | null> {
      return new Promise<PlainAnswer | null>((resolve, reject) => {
        queue.push({ job, isCancelled, resolve, reject });
        handOut();
      }) as Promise<AnswerTo<Job> | null>;
    },
    help: (isWanted) => doWaiting(queue, lone, isWanted),
    dismiss() {
      for (const { resolve } of queue.splice(0)) resolve(null);
      for (const { port, at } of hands.splice(0)) {
        port.terminate();
        at.forEach(({ resolve }) => resolve(null));
      }
    },
  };
}

async function doWaiting(queue: Waiting[], lone: Crew, isWanted: () => boolean): Promise<void> {
  while (isWanted()) {
    const next = queue.shift();
    if (next === undefined) return;
    await lone.do(next.job, next.isCancelled).then(next.resolve, next.reject);
  }
}
