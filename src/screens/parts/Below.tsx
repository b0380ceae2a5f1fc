import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";

/** What lies below the first screenful: drawn once that is painted, so that a tap is answered before all of a long page is made. */
export function Below({ children }: { readonly children: ComponentChildren }) {
  const [drawn, setDrawn] = useState(typeof document === "undefined");
  // An effect runs after the paint.
  useEffect(() => setDrawn(true), []);
  return <>{drawn && children}</>;
}
