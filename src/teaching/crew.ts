import { type AnswerTo, doPlainJob, type PlainJob } from "./plainJobs.js";

/** Whoever fits the plain models: the thread at hand, or several beside it. */
export interface Crew {
  /**
   * Does a job when its turn comes.
   *
   * @param isCancelled - asked before the job begins
   * @returns null if it was cancelled
   */
  do<Job extends PlainJob>(job: Job, isCancelled: () => boolean): Promise<AnswerTo<Job> | null>;
  /** Does what waits in the thread at hand as well, one job after the other, as long as it is wanted: for an idle thread. */
  help(isWanted: () => boolean): Promise<void>;
}

/** A crew's work on behalf of one teaching, which may be cancelled. */
export type DoJob = <Job extends PlainJob>(job: Job) => Promise<AnswerTo<Job> | null>;

/** The answers, or null if one of them was cancelled. */
export function allOrNull<T>(answers: readonly (T | null)[]): readonly T[] | null {
  const given = answers.filter((answer) => answer !== null);
  return given.length === answers.length ? given : null;
}

/** Does all jobs in this thread, one after the other, and lets messages in between. */
export function createLoneCrew(): Crew {
  let turn: Promise<unknown> = Promise.resolve();
  return {
    do<Job extends PlainJob>(job: Job, isCancelled: () => boolean): Promise<AnswerTo<Job> | null> {
      const mine = turn.then(async () => {
        await new Promise((resolve) => setTimeout(resolve, 0));
        return isCancelled() ? null : (doPlainJob(job) as AnswerTo<Job>);
      });
      // A job that failed tells its own caller; the next one has its turn all the same.
      turn = mine.catch(() => undefined);
      return mine;
    },
    // Its thread does everything as it is.
    help: () => Promise.resolve(),
  };
}
