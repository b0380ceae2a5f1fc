/**
 * How far the first run has come on this browser. It is kept apart from the data, so that it stands before the store
 * is open, and a restored phone greets its owner once.
 */
import { signal, type ReadonlySignal } from "@preact/signals";
import { FIRST_RUN_STEPS, type FirstRunStep } from "../views/firstRunView.js";

const KEY = "nidor-first-run";
const DONE = "done";

export interface FirstRun {
  /** null once it is over. */
  readonly step: ReadonlySignal<FirstRunStep | null>;
  next(): void;
  finish(): void;
}

export function createFirstRun(): FirstRun {
  const step = signal(kept());
  const keep = (now: FirstRunStep | null) => {
    step.value = now;
    try {
      localStorage.setItem(KEY, now ?? DONE);
    } catch {
      // Nothing can be kept here: it greets again next time.
    }
  };
  return {
    step,
    next: () => {
      const place = FIRST_RUN_STEPS.findIndex((known) => known === step.value);
      keep(FIRST_RUN_STEPS[place + 1] ?? null);
    },
    finish: () => keep(null),
  };
}

function kept(): FirstRunStep | null {
  const first = FIRST_RUN_STEPS[0];
  try {
    const word = localStorage.getItem(KEY);
    if (word === DONE) return null;
    return FIRST_RUN_STEPS.find((known) => known === word) ?? first;
  } catch {
    return first;
  }
}
