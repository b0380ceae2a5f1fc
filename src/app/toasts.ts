import { signal, type ReadonlySignal } from "@preact/signals";

/** How long a note stays; long enough to read it and reach Undo. */
const SHOWN_MS = 8_000;

export interface Toast {
  readonly text: string;
  readonly undo: (() => void) | null;
}

/** One short note at a time, with a way back where there is one. */
export interface Toasts {
  readonly toast: ReadonlySignal<Toast | null>;
  show(text: string, undo?: () => void): void;
  undo(): void;
}

export function createToasts(): Toasts {
  const toast = signal<Toast | null>(null);
  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    toast,
    show: (text, undo) => {
      clearTimeout(timer);
      toast.value = { text, undo: undo ?? null };
      timer = setTimeout(() => {
        toast.value = null;
      }, SHOWN_MS);
    },
    undo: () => {
      const undo = toast.value?.undo;
      toast.value = null;
      undo?.();
    },
  };
}
