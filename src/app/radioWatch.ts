/** What outside the app decides whether a sniffer can be reached: the radio, and the page being in sight. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { watchAvailability, type Availability } from "../radio/watchAvailability.js";

/** Is there a radio? null until the browser has said: nothing is refused for want of an answer. */
export function availabilitySignal(bluetooth: Bluetooth | undefined): ReadonlySignal<Availability | null> {
  const availability = signal<Availability | null>(null);
  watchAvailability(bluetooth, (now) => {
    availability.value = now;
  });
  return availability;
}

/** Is the page in sight? */
export function inSightSignal(): ReadonlySignal<boolean> {
  const inSight = signal(document.visibilityState === "visible");
  document.addEventListener("visibilitychange", () => {
    inSight.value = document.visibilityState === "visible";
  });
  return inSight;
}
