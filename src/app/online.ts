import { signal, type ReadonlySignal } from "@preact/signals";

/** Is there a network? Nothing waits for it; the person is only told. */
export function onlineSignal(): ReadonlySignal<boolean> {
  const online = signal(navigator.onLine);
  const look = () => {
    online.value = navigator.onLine;
  };
  addEventListener("online", look);
  addEventListener("offline", look);
  return online;
}
