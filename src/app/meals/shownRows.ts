/** How many rows of the list of meals are drawn. */
import { signal, type ReadonlySignal } from "@preact/signals";
import { oncePainted } from "../afterPaint.js";

/** Rows of a first picture: one screen, for each choice draws them anew. */
const FIRST_SHOWN = 8;
/** How many are drawn by themselves, a screen a picture: two screens and more. */
const SHOWN_AT_ONCE = 25;
/** At least so many more are drawn each time the end comes near. */
const LEAST_MORE = 50;
/** A long list grows by this share of itself, so that drawing all of it costs its length and not the square of it. */
const GROWTH = 0.25;

export interface ShownRows {
  readonly shown: ReadonlySignal<number>;
  /** Begins at the top again. */
  anew(): void;
  /** The end came near. */
  more(): void;
}

/** @param available - how many rows there are to show */
export function createShownRows(available: () => number): ShownRows {
  const shown = signal(SHOWN_AT_ONCE);
  let isFilling = false;

  function fill(): void {
    if (isFilling || shown.value >= SHOWN_AT_ONCE) return;
    isFilling = true;
    oncePainted(() => {
      isFilling = false;
      shown.value = Math.min(SHOWN_AT_ONCE, shown.value + FIRST_SHOWN);
      fill();
    });
  }

  return {
    shown,
    anew: () => {
      shown.value = FIRST_SHOWN;
      fill();
    },
    more: () => {
      if (isFilling) return;
      const more = Math.max(LEAST_MORE, Math.round(GROWTH * shown.value));
      shown.value = Math.min(available(), shown.value + more);
    },
  };
}
