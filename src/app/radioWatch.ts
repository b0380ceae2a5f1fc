/** What outside the app decides whether a sniffer can be reached: the radio, and the page being in sight. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { watchAvailability, type Availability } from "../radio/watchAvailability.js";

/** Is there a radio? Until the browser has said, it is taken to be there: nothing is refused for want of an answer. */
export function availabilitySignal(bluetooth: Bluetooth | undefined): ReadonlySignal<Availability> {
  const availability = signal<Availability>("available");
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
