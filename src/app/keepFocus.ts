/** What the keyboard reaches. */
const REACHED = "a[href], button, input, select, textarea, summary, [tabindex]";

/**
 * Keeps the keyboard's place on a page: where the control that has the focus is taken away, as a suggestion is once it
 * was taken, the focus goes to the nearest thing that is left. A finger's focus is left alone: moving it would open
 * the keyboard on the screen.
 *
 * @see WCAG 2.2, success criterion 2.4.3, Focus Order
 */
export function keepFocus(root: HTMLElement): void {
  let trail: readonly Element[] = [];
  root.addEventListener("focusin", ({ target }) => {
    trail = target instanceof Element && target.matches(":focus-visible") ? trailOf(target, root) : [];
  });
  new MutationObserver(() => {
    const isLost = document.activeElement === document.body && trail[0]?.isConnected === false;
    if (!isLost) return;
    const near = trail.find((element) => element.isConnected) ?? root;
    const next = near.querySelector<HTMLElement>("main h1") ?? near.querySelector<HTMLElement>(REACHED);
    (next ?? root.querySelector<HTMLElement>("main"))?.focus({ preventScroll: true });
  }).observe(root, { childList: true, subtree: true });
}

/** An element and all around it, up to the root. */
function trailOf(element: Element, root: Element): Element[] {
  const parent = element.parentElement;
  return element === root || parent === null ? [element] : [element, ...trailOf(parent, root)];
}
