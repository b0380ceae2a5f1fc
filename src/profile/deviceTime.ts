/** The sniffer's own clock as it is on the air: milliseconds modulo 2^32. PROFILE.md section 7. */

export const DEVICE_TIME_MODULUS = 0x100000000;

/** From one device time, as sent, to another: negative if the second is earlier, the wrap taken the short way round. */
export function deviceTimeFrom(firstMs: number, secondMs: number): number {
  const forward = (secondMs - firstMs + DEVICE_TIME_MODULUS) % DEVICE_TIME_MODULUS;
  return forward < DEVICE_TIME_MODULUS / 2 ? forward : forward - DEVICE_TIME_MODULUS;
}
