import { useEffect } from "preact/hooks";

/** Where the person was last; the first screen after loading leaves the focus alone. */
let lastPlace: string | null = null;

/** Moves the focus to the new screen's heading, so that a screen reader reads it and the keyboard goes on from there. */
export function useHeadingFocus(place: string): void {
  useEffect(() => {
    const heading = document.querySelector<HTMLElement>("main h1");
    const moved = lastPlace !== null && lastPlace !== place;
    // A place that is still being loaded has no heading: the focus waits in its frame, and moves on when it has.
    if (moved && heading === null) return focusOn(document.querySelector("main"));
    lastPlace = place;
    if (moved) focusOn(heading);
  }, [place]);
}

const focusOn = (element: HTMLElement | null): void => element?.focus({ preventScroll: true });
