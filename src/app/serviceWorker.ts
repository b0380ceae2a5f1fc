import { signal, type ReadonlySignal } from "@preact/signals";
import { untilHere } from "./pieces.js";

export interface Updates {
  /** A newer app is downloaded and waits for the user's word. */
  readonly waiting: ReadonlySignal<boolean>;
  /** Puts the newer app in place and loads it. */
  apply(): void;
  /** Not now: it is offered again at the next start. */
  later(): void;
}

/** Registers the service worker, which keeps the app usable offline. An update waits: never in mid-sniff. */
export function registerServiceWorker(): Updates {
  const waiting = signal(false);
  let apply = (): void => undefined;
  if ("serviceWorker" in navigator && import.meta.env.PROD)
    untilHere(() => import("./watchUpdates.js")).then(
      ({ watchUpdates }) => {
        apply = watchUpdates(waiting);
      },
      () => undefined,
    );
  return {
    waiting,
    apply: () => apply(),
    later: () => {
      waiting.value = false;
    },
  };
}
