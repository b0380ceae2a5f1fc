/** Callbacks that do nothing, for screens that are only looked at. */
export function noCalls<T extends object>(): T {
  return new Proxy({} as T, { get: () => () => undefined });
}
