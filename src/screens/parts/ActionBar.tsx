import type { ComponentChildren } from "preact";

/** What is tapped at the thumb. `last`: nothing stands below it, so it keeps clear of the screen's edge. */
export function ActionBar({
  children,
  last = false,
}: {
  readonly children: ComponentChildren;
  readonly last?: boolean;
}) {
  return <div class={last ? "actions actions--last" : "actions"}>{children}</div>;
}
