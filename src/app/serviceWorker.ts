import { signal, type ReadonlySignal } from "@preact/signals";
import type { Workbox } from "workbox-window";

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
  if (!("serviceWorker" in navigator) || !import.meta.env.PROD)
    return { waiting, apply: () => undefined, later: () => undefined };
  let workbox: Workbox | null = null;

  async function register(): Promise<void> {
    const { Workbox: Registration } = await import("workbox-window");
    workbox = new Registration("./sw.js");
    workbox.addEventListener("waiting", () => {
      waiting.value = true;
    });
    workbox.addEventListener("controlling", (event) => {
      // The first install takes control without a reload; only an update that was agreed to needs one.
      if (event.isUpdate === true) location.reload();
    });
    await workbox.register();
  }

  // Without a service worker (private window, policy) the app works online all the same.
  register().catch(() => undefined);
  return {
    waiting,
    apply: () => workbox?.messageSkipWaiting(),
    later: () => {
      waiting.value = false;
    },
  };
}
