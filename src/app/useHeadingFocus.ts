import { useEffect } from "preact/hooks";

/** Where the person was last; the first screen after loading leaves the focus alone. */
let lastPlace: string | null = null;

/** Moves the focus to the new screen's heading, so that a screen reader reads it and the keyboard goes on from there. */
export function useHeadingFocus(place: string): void {
  useEffect(() => {
    const heading = document.querySelector<HTMLElement>("main h1");
    const moved = lastPlace !== null && lastPlace !== place;
    // A place that is still being loaded has no heading: the focus moves when it has.
    if (moved && heading === null) return;
    lastPlace = place;
    if (moved) heading?.focus({ preventScroll: true });
  }, [place]);
}
