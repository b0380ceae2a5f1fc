import type { ComponentChildren } from "preact";

/** Details that open at a tap. */
export function Fold({ title, children }: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <details class="fold">
      <summary>{title}</summary>
      <div class="stack stack--tight">{children}</div>
    </details>
  );
}
