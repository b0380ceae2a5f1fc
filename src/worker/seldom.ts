/**
 * Passes on the first value, and then at most one in each stretch of time; what comes in between is left out.
 *
 * @param everyMs - length of the stretch, milliseconds
 * @param nowMs - a clock that never goes back
 */
export function seldom<T>(
  tell: (value: T) => void,
  everyMs: number,
  nowMs: () => number,
): (value: T) => void {
  let nextMs = -Infinity;
  return (value) => {
    if (nowMs() < nextMs) return;
    nextMs = nowMs() + everyMs;
    tell(value);
  };
}
