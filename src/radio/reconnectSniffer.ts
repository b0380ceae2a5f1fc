/** Connects to a device that was lost, again and again, more slowly each time. */
import type { Link, LinkError } from "../kernel/link.js";
import { err, type Result } from "../kernel/result.js";
import { connectSniffer } from "./connectSniffer.js";

/** Waits before each try; about half a minute in all. Common practice: double the wait each time. */
export const RECONNECT_WAITS_MS: readonly number[] = [0, 500, 1000, 2000, 4000, 8000, 16000];

export interface ReconnectOptions {
  readonly waitsMs?: readonly number[];
  /** Stops trying when aborted; the answer is then `lost`. */
  readonly signal?: AbortSignal;
  /** For tests; settles after so many milliseconds or when the signal aborts. */
  readonly wait?: (ms: number, signal: AbortSignal | undefined) => Promise<void>;
}

/** Goes on only while the answer is `lost`: anything else will not mend itself. Never throws. */
export async function reconnectSniffer(
  device: BluetoothDevice,
  { waitsMs = RECONNECT_WAITS_MS, signal, wait = sleep }: ReconnectOptions = {},
): Promise<Result<Link, LinkError>> {
  for (const ms of waitsMs) {
    await wait(ms, signal);
    if (signal?.aborted) break;
    const link = await connectSniffer(device, signal);
    if (link.ok || link.error.kind !== "lost") return link;
  }
  return err({ kind: "lost" });
}

function sleep(ms: number, signal: AbortSignal | undefined): Promise<void> {
  return new Promise((resolve) => {
    const done = (): void => {
      clearTimeout(timer);
      signal?.removeEventListener("abort", done);
      resolve();
    };
    const timer = setTimeout(done, ms);
    signal?.addEventListener("abort", done);
    if (signal?.aborted) done();
  });
}
