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
