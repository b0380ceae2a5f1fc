/**
 * Which of the browser's devices is which sniffer. Kept apart from the data: a device id means nothing to another
 * browser, so it belongs in no backup.
 */
import { inStorage } from "./inStorage.js";

const KEY = "nidor-devices";

/** Sniffer id by device id; empty where nothing is or can be kept. */
export function snifferIdsByDevice(): Readonly<Record<string, string>> {
  try {
    const kept: unknown = JSON.parse(inStorage((storage) => storage.getItem(KEY)) ?? "{}");
    if (typeof kept !== "object" || kept === null) return {};
    return Object.fromEntries(
      Object.entries(kept).flatMap(([device, id]) => (typeof id === "string" ? [[device, id]] : [])),
    );
  } catch {
    return {};
  }
}

/** null forgets the device. Where nothing can be kept, the sniffer is known by the browser's name for it. */
export function noteDevice(deviceId: string, snifferId: string | null): void {
  const { [deviceId]: _before, ...others } = snifferIdsByDevice();
  const now = snifferId === null ? others : { ...others, [deviceId]: snifferId };
  inStorage((storage) => storage.setItem(KEY, JSON.stringify(now)));
}
