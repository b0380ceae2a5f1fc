import { useEffect, useMemo } from "preact/hooks";

/** Makes a part that lives as long as the page that uses it; another key, another part. */
export function useControl<T extends { close(): void }>(make: () => T, key: string): T {
  const control = useMemo(make, [key]);
  useEffect(() => () => control.close(), [control]);
  return control;
}
