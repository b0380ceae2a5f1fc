import { failureOf } from "../flows/openSniffer.js";
import { err } from "../kernel/result.js";
import { connectSniffer } from "../radio/connectSniffer.js";
import { whenNear } from "../radio/whenNear.js";
import type { Dial } from "./snifferConnection.js";

/** How long a remembered sniffer is listened for before connecting is given up. */
const NEAR_LIMIT_MS = 10_000;

/** Connects to a device that the chooser gave. */
export function dialDevice(device: BluetoothDevice): Dial {
  return async (signal) => {
    const link = await connectSniffer(device, signal);
    return link.ok ? link : err(failureOf(link.error));
  };
}

/** Connects to a device that the browser remembers, listening for it first where it must. */
export function dialRemembered(device: BluetoothDevice): Dial {
  const dial = dialDevice(device);
  return async (signal) => {
    const link = await dial(signal);
    if (link.ok || link.error.kind !== "unreachable" || signal?.aborted) return link;
    const limit = AbortSignal.timeout(NEAR_LIMIT_MS);
    const patience = signal === undefined ? limit : AbortSignal.any([signal, limit]);
    return (await whenNear(device, patience)) ? dial(signal) : link;
  };
}
