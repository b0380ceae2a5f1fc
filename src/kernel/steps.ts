/** A long computation in steps: each gives how far it is, a fraction, so that whoever runs it can tell, or stop. */
export type Steps<T> = Generator<number, T, void>;

/** Runs a computation to its end. */
export function runThrough<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
