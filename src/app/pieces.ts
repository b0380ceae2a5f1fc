/** Pieces of the app that come late. One that cannot be had is asked for again until it is here. */
import { computed, signal } from "@preact/signals";

/** A network that is said to be there may carry nothing, and no event tells when it does again. Common practice. */
export const ASKED_AGAIN_MS = 5000;

const missing = signal(0);

/** Something of the app was asked for and could not be had yet: the person is told. */
export const isPieceMissing = computed(() => missing.value > 0);

/**
 * Loads a piece, and again when the network is back, until it is here: Chromium keeps no import that failed.
 *
 * @throws what `load` throws but for a TypeError: with it an import says that it had no answer
 * @see WHATWG, HTML, 8.1.6.7.3 (HostLoadImportedModule): a module that cannot be fetched rejects with a TypeError
 */
export async function untilHere<T>(load: () => Promise<T>): Promise<T> {
  let isMissing = false;
  try {
    for (;;) {
      try {
        return await load();
      } catch (cause) {
        if (!(cause instanceof TypeError)) throw cause;
      }
      if (!isMissing) missing.value += 1;
      isMissing = true;
      await networkOrWhile();
    }
  } finally {
    if (isMissing) missing.value -= 1;
  }
}

function networkOrWhile(): Promise<void> {
  return new Promise((resume) => {
    const timer = setTimeout(goOn, ASKED_AGAIN_MS);
    addEventListener("online", goOn);
    function goOn() {
      clearTimeout(timer);
      removeEventListener("online", goOn);
      resume();
    }
  });
}
