/** Has this browser a Bluetooth radio that the page may use? */

/**
 * `available` does not promise that the radio is switched on: the draft lets a browser say so of one that is off.
 *
 * @see Web Bluetooth draft, Bluetooth.getAvailability
 */
export type Availability =
  | "unsupported" // no Web Bluetooth in this browser: use another
  | "unavailable" // no radio, or a policy forbids it
  | "available";

/**
 * Tells the availability now and at every change. Never throws.
 *
 * @returns stops watching
 */
export function watchAvailability(
  bluetooth: Bluetooth | undefined,
  onChange: (availability: Availability) => void,
): () => void {
  if (bluetooth === undefined) {
    onChange("unsupported");
    return () => undefined;
  }
  let last: Availability | undefined;
  let watching = true;
  const tell = (available: boolean): void => {
    const now = available ? "available" : "unavailable";
    if (!watching || now === last) return;
    last = now;
    onChange(now);
  };
  let asked = 0;
  const ask = async (): Promise<void> => {
    asked += 1;
    const mine = asked;
    const available = await isAvailable(bluetooth);
    // An older answer may come after a newer one.
    if (mine === asked) tell(available);
  };
  const onEvent = (): void => void ask();
  bluetooth.addEventListener("availabilitychanged", onEvent);
  void ask();
  return () => {
    watching = false;
    bluetooth.removeEventListener("availabilitychanged", onEvent);
  };
}

async function isAvailable(bluetooth: Bluetooth): Promise<boolean> {
  try {
    return await bluetooth.getAvailability();
  } catch {
    return false;
  }
}
