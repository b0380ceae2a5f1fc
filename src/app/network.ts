import { signal, type ReadonlySignal } from "@preact/signals";

/** The network, and what of the app needs it. Nothing waits for it; the person is only told. */
export interface Network {
  readonly online: ReadonlySignal<boolean>;
  /** A service worker answers for this page: all of the app is on the phone. */
  readonly kept: ReadonlySignal<boolean>;
}

export function watchNetwork(): Network {
  const online = signal(navigator.onLine);
  const kept = signal(false);
  const look = () => {
    online.value = navigator.onLine;
    kept.value = "serviceWorker" in navigator && navigator.serviceWorker.controller !== null;
  };
  addEventListener("online", look);
  addEventListener("offline", look);
  if ("serviceWorker" in navigator) navigator.serviceWorker.addEventListener("controllerchange", look);
  look();
  return { online, kept };
}
