import type { Signal } from "@preact/signals";
import { Workbox } from "workbox-window";

/**
 * Registers the service worker and tells of a newer app.
 *
 * @param waiting - set when a newer app is there
 * @returns puts the newer app in place and loads it
 */
export function watchUpdates(waiting: Signal<boolean>): () => void {
  const workbox = new Workbox("./sw.js");
  let isAgreed = false;
  let isInPlace = false;
  let isControlled = navigator.serviceWorker.controller !== null;
  workbox.addEventListener("waiting", () => {
    waiting.value = true;
  });
  workbox.addEventListener("controlling", () => {
    if (isAgreed) return location.reload();
    // The first one takes control without a reload; only an update that was agreed to needs one.
    if (!isControlled) {
      isControlled = true;
      return;
    }
    // Another tab said yes: this one may be in the middle of a sniff, and is asked for itself.
    isInPlace = true;
    waiting.value = true;
  });
  // Without a service worker (private window, policy) the app works online all the same.
  workbox.register().catch(() => undefined);
  return () => {
    isAgreed = true;
    if (isInPlace) location.reload();
    else workbox.messageSkipWaiting();
  };
}
