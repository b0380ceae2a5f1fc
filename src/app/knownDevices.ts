/**
 * Which of the browser's devices is which sniffer. Kept apart from the data: a device id means nothing to another
 * browser, so it belongs in no backup.
 */
const KEY = "nidor-devices";

/** Sniffer id by device id; empty where nothing is or can be kept. */
export function snifferIdsByDevice(): Readonly<Record<string, string>> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    if (typeof kept !== "object" || kept === null) return {};
    return Object.fromEntries(
      Object.entries(kept).flatMap(([device, id]) => (typeof id === "string" ? [[device, id]] : [])),
    );
  } catch {
    return {};
  }
}

/** null forgets the device. */
export function noteDevice(deviceId: string, snifferId: string | null): void {
  const { [deviceId]: _before, ...others } = snifferIdsByDevice();
  try {
    localStorage.setItem(
      KEY,
      JSON.stringify(snifferId === null ? others : { ...others, [deviceId]: snifferId }),
    );
  } catch {
    // Nothing can be kept here: the sniffer is then known by the browser's name for it.
  }
}
