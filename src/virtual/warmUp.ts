/** How far a cold film starts from its settled log resistance, one a film. Invented for the model. */
const COLD_LOG_OFFSET = [-0.9, 0.6] as const;
/** The warm-up time holds this many time constants: what is left at its end is below the noise. */
const TIME_CONSTANTS = 6;

/**
 * Offset of the logarithm of a film's resistance while it warms up: an exponential approach to 0.
 *
 * @param sinceBootMs - time since switching on, >= 0
 * @param warmUpMs - the stated warm-up time; 0 means none is needed
 */
export function warmUpOffset(film: 0 | 1, sinceBootMs: number, warmUpMs: number): number {
  if (warmUpMs === 0) return 0;
  return COLD_LOG_OFFSET[film] * Math.exp((-TIME_CONSTANTS * sinceBootMs) / warmUpMs);
}

/** Time left until warm, in milliseconds, whole, never negative. */
export function warmUpLeftMs(sinceBootMs: number, warmUpMs: number): number {
  return Math.max(0, Math.ceil(warmUpMs - sinceBootMs));
}
