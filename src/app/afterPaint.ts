import { effect, type ReadonlySignal, signal } from "@preact/signals";

/**
 * Follows a signal once the next picture is on the screen: a touch is answered before what follows from it is worked out.
 * Where nothing is drawn it follows at once.
 */
export function afterPaint<T>(source: ReadonlySignal<T>): ReadonlySignal<T> {
  const following = signal(source.peek());
  let isAsked = false;
  const follow = () => {
    isAsked = false;
    following.value = source.peek();
  };
  effect(() => {
    if (source.value === following.peek() || isAsked) return;
    isAsked = true;
    oncePainted(follow);
  });
  return following;
}

/** Does something once the next picture is on the screen; at once where nothing is drawn. */
export function oncePainted(act: () => void): void {
  if (typeof requestAnimationFrame !== "function") act();
  else requestAnimationFrame(() => setTimeout(act));
}
