import { options } from "preact";
import { oncePainted } from "./afterPaint.js";

/** Events that a person waits for an answer to. */
const TOUCHES: readonly string[] = ["click", "input", "change", "keydown"];

/**
 * Lets the browser show a touch, such as a pressed button or a typed letter, before the page is drawn anew for it: what
 * answers first comes first, however much is to be drawn. Everything else is drawn at once, as before.
 *
 * @see J. Wagner, "Optimize Interaction to Next Paint", web.dev, 2023: yield, so that the next picture can come
 */
export function answerFirst(): void {
  options.debounceRendering = (draw) => {
    // The event that is being handled; none in a timer, or once a handler has waited for something.
    const { event } = window;
    if (event?.isTrusted === true && TOUCHES.includes(event.type)) oncePainted(draw);
    else queueMicrotask(draw);
  };
  addEventListener("click", openAfterPicture);
}

/** What a fold hides is laid out when it opens: more than a tap may wait for where the page is long. */
function openAfterPicture(event: MouseEvent): void {
  const fold = event.target instanceof Element ? event.target.closest("summary")?.parentElement : null;
  if (event.defaultPrevented || !(fold instanceof HTMLDetailsElement)) return;
  event.preventDefault();
  oncePainted(() => {
    fold.open = !fold.open;
  });
}
