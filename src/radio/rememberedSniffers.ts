/**
 * Devices this page was allowed before. Few browsers remember; none is a normal answer. Never throws.
 *
 * @see Web Bluetooth draft, Bluetooth.getDevices
 */
export async function rememberedSniffers(
  bluetooth: Bluetooth | undefined,
): Promise<readonly BluetoothDevice[]> {
  try {
    // Typed as always there, but most browsers keep it behind a flag.
    const getDevices: Bluetooth["getDevices"] | undefined = bluetooth?.getDevices;
    return (await getDevices?.call(bluetooth)) ?? [];
  } catch {
    return [];
  }
}

/** Takes back the page's leave to use a device, where the browser can. Never throws. */
export async function forgetDevice(device: BluetoothDevice): Promise<void> {
  const forget: BluetoothDevice["forget"] | undefined = device.forget;
  await forget?.call(device).catch(() => undefined);
}
