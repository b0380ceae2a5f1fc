/**
 * Waits until a remembered device is heard, where the browser can listen for it. Some browsers refuse to connect to a
 * remembered device that they have not heard since they started. Never throws.
 *
 * @returns false where it was not heard in time, or the browser cannot listen
 * @see Web Bluetooth draft, BluetoothDevice.watchAdvertisements
 */
export async function whenNear(device: BluetoothDevice, signal: AbortSignal): Promise<boolean> {
  // Typed as always there, but most browsers keep it behind a flag.
  const watch: BluetoothDevice["watchAdvertisements"] | undefined = device.watchAdvertisements;
  if (watch === undefined || signal.aborted) return false;
  const listening = new AbortController();
  const heard = new Promise<boolean>((resolve) => {
    device.addEventListener("advertisementreceived", () => resolve(true), {
      once: true,
      signal: listening.signal,
    });
    signal.addEventListener("abort", () => resolve(false), { once: true, signal: listening.signal });
  });
  try {
    await watch.call(device, { signal: listening.signal });
    return await heard;
  } catch {
    return false;
  } finally {
    listening.abort();
  }
}
